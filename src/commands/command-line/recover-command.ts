import type { Command } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, inLines, shared } from './options.ts';

/** Adds the command about files that are gone. */
export function addRecoverCommand(program: Command, outside: Outside, done: Done): void {
  program
    .command('recover')
    .description('files that are gone: list them, give one up for good, or rebuild it from the journal')
    .argument('[file]', 'the file (holes/ZQRC001.json) or its id')
    .option('--let-go <why>', 'give it up for good: who, when and why is recorded')
    .option('--restore', 'rebuild it from what the journal still has of it')
    .action(async (file, options, command: Command) => {
      const { recover } = await import('../recover.ts');
      const { letGo, restore } = options;
      const asked = { ...shared(command), file, letGo, restore: restore === true };
      const run = (printing: Outside) => recover(printing, asked);
      done(await (file === undefined ? run(outside) : inLines(outside, command, run)));
    });
}
