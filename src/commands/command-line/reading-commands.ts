import { type Command, Option } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, shared } from './options.ts';

/** Adds the command that takes an instrument's file of readings in. */
export function addReadingCommands(program: Command, outside: Outside, done: Done): void {
  program
    .command('readings')
    .description("take an instrument's readings from its CSV into logged rows, all of them or none")
    .argument('<hole>', 'hole that was read')
    .argument('<file>', 'CSV with headings in its first line')
    .option('--field <name>', 'column of the log that they belong to, where it has several')
    .option('--depth <heading>', 'column of a single depth, in metres')
    .option('--from <heading>', 'column of the top of each reading, in metres')
    .option('--to <heading>', 'column of its bottom, in metres')
    .option('--reading <heading>', 'column of the readings')
    .option('--hole <heading>', 'column of the hole, where the file has several')
    .option('--unit <unit>', 'what the file counts in, like "1e-5 SI" or ppm')
    .addOption(
      oneOf('depth-is', 'a single depth on the edge of two rows is this of its metre', ['top', 'foot']),
    )
    .addOption(oneOf('several', 'several readings of one row are stored as this', ['mean']))
    .addOption(oneOf('below', 'a reading below detection is stored as this', ['none', 'nr', 'half']))
    .option('--round', 'round to the decimals of the column')
    .option('--replace', 'replace readings that are there and differ')
    .option('--preview', 'show what would be taken, and write nothing')
    .addHelpText(
      'after',
      '\nHeadings and unit can be kept as "csv" of the field in logging.json; what is given here comes first.\nExit 1: a line can’t be used, and so nothing of the file is.',
    )
    .action(async (hole, file, options, command: Command) => {
      const { readings } = await import('../readings.ts');
      const { field, depth, from, to, reading, unit } = options;
      const { depthIs, several, below, round, replace } = options;
      done(
        await readings(outside, {
          ...shared(command),
          hole,
          file,
          field,
          columns: { depth, from, to, reading, hole: options.hole, unit },
          choices: { depthIs, several, below, round: round === true, replace: replace === true },
          preview: options.preview === true,
        }),
      );
    });
}

function oneOf(name: string, what: string, choices: readonly string[]): Option {
  return new Option(`--${name} <word>`, what).choices(choices);
}
