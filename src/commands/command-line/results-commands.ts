import type { Command } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, inLines, shared } from './options.ts';

/** Adds the commands about results that come back, and what they ask for. */
export function addResultsCommands(program: Command, outside: Outside, done: Done): void {
  addResults(program, outside, done);
  addResplit(program, outside, done);
  addControls(program, outside, done);
}

function addControls(program: Command, outside: Outside, done: Done): void {
  program
    .command('controls')
    .description('the control scheme: what it reserves, each rate as wanted, given and put out, the stock')
    .action(async (_options, command: Command) => {
      const { controls } = await import('../controls.ts');
      done(await controls(outside, shared(command)));
    });
}

function addResplit(program: Command, outside: Outside, done: Done): void {
  program
    .command('resplit')
    .description('single metres that composites ask for: where they lie, their numbers and controls')
    .argument('<hole>', 'the hole')
    .option(
      '--numbers <first-last>',
      'bags labelled for them, whole or by their last digits; what the hole has left, if left out',
    )
    .option('--take', 'number them, in one edit')
    .option('--csv', 'as CSV')
    .action(async (hole: string, options, command: Command) => {
      const { resplit } = await import('../resplit.ts');
      const [first = '', last = first] = String(options.numbers ?? '').split(/[–,]|-(?=[^-]*$)/);
      done(
        await inLines(outside, command, (printing) =>
          resplit(printing, {
            ...shared(command),
            hole,
            numbers: options.numbers === undefined ? undefined : { first, last },
            take: options.take === true,
            csv: options.csv === true,
          }),
        ),
      );
    });
}

function addResults(program: Command, outside: Outside, done: Done): void {
  program
    .command('results')
    .description('what the laboratory returned: standards, blanks, pairs; with a file, takes it in first')
    .argument('[file]', "the laboratory's CSV, read as project.json maps its columns")
    .option('--certificate <number>', "the laboratory's number of it; the name of the file, if left out")
    .option(
      '--supersedes <certificate>',
      'it was issued again in place of this one, which stays and counts no more',
    )
    .option('--keep-going', 'leave lines out that cannot be read')
    .option('--hole <hole>', 'the results of this hole by metre')
    .option('--masses', 'record the masses of calicos as received, where none was weighed on the rig')
    .option('--csv', 'with --hole: as CSV')
    .option('--html', 'charts as a page for the report')
    .action(async (file: string | undefined, options, command: Command) => {
      const given = shared(command);
      if (options.hole !== undefined) {
        const { resultsOfHole } = await import('../by-metre.ts');
        const asked = { ...given, hole: options.hole, csv: options.csv === true };
        done(await inLines(outside, command, (printing) => resultsOfHole(printing, asked)));
        return;
      }
      if (options.masses === true) {
        const { laboratoryMasses } = await import('../laboratory-masses.ts');
        done(await inLines(outside, command, (printing) => laboratoryMasses(printing, given)));
        return;
      }
      const { results } = await import('../results.ts');
      done(
        await results(outside, {
          ...given,
          file,
          certificate: options.certificate,
          supersedes: options.supersedes,
          keepGoing: options.keepGoing === true,
          as: options.html === true ? 'html' : given.json ? 'json' : 'text',
        }),
      );
    });
}
