import { type Command, Option } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, inLines, shared } from './options.ts';

/** Adds the command about cells that two copies changed differently. */
export function addQuestionsCommand(program: Command, outside: Outside, done: Done): void {
  program
    .command('questions')
    .description(
      'what two copies say differently, logged twice, or a rod recorded twice: listed by number, or one settled',
    )
    .argument('[number]', 'the question to settle, as listed')
    .addOption(
      new Option(
        '--with <copy>',
        'ours (there now) or theirs of a value; first or second of two rows or rods, or both, which splits the rows',
      ).choices(['ours', 'theirs', 'first', 'second', 'both']),
    )
    .action(async (number: string | undefined, options, command: Command) => {
      const { questions } = await import('../questions.ts');
      const asked = { ...shared(command), number, chosen: options.with };
      const run = (printing: Outside) => questions(printing, asked);
      done(await (number === undefined ? run(outside) : inLines(outside, command, run)));
    });
}
