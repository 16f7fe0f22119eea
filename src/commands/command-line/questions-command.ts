import { type Command, Option } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, withProject, withWho } from './options.ts';

/** Adds the command about cells that two copies changed differently. */
export function addQuestionsCommand(program: Command, outside: Outside, done: Done): void {
  withWho(withProject(program.command('questions')))
    .description('cells that two copies changed differently: listed by number, or one settled')
    .argument('[number]', 'the question to settle, as listed')
    .addOption(new Option('--with <copy>', 'which of the two holds').choices(['ours', 'theirs']))
    .option('--json', 'as data')
    .action(async (number: string | undefined, options) => {
      const { questions } = await import('../questions.ts');
      const { project: folder, by, json } = options;
      done(await questions(outside, { folder, by, number, chosen: options.with, json: json === true }));
    });
}
