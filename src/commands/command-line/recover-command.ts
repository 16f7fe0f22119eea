import type { Command } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, withProject, withWho } from './options.ts';

/** Adds the command about files that are gone. */
export function addRecoverCommand(program: Command, outside: Outside, done: Done): void {
  withWho(withProject(program.command('recover')))
    .description('files that are gone: list them, let one go for good, or make it anew from the journal')
    .argument('[file]', 'the file (holes/ZQRC001.json) or its id')
    .option('--let-go <why>', 'give it up for good: who, when and why is recorded')
    .option('--restore', 'make it anew from what the journal still holds of it')
    .option('--json', 'the list as data')
    .action(async (file, options) => {
      const { recover } = await import('../recover.ts');
      done(
        await recover(outside, {
          folder: options.project,
          by: options.by,
          file,
          letGo: options.letGo,
          restore: options.restore === true,
          json: options.json === true,
        }),
      );
    });
}
