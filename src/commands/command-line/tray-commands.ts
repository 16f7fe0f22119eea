import type { Command } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, shared } from './options.ts';

/** Adds the command about chip trays. */
export function addTraysCommand(program: Command, outside: Outside, done: Done): void {
  program
    .command('trays')
    .description('the chip trays of a hole: metres, labels, photographs')
    .argument('<hole>', 'the hole')
    .option(
      '--photos <folder>',
      'register its pictures by their names: tray3.jpg, MBRC001_3.jpg, MBRC001 40-60.jpg',
    )
    .option('--csv', 'as CSV, for labels')
    .action(async (hole: string, options, command: Command) => {
      const { trays } = await import('../trays.ts');
      const given = shared(command);
      const as = given.json ? 'json' : options.csv === true ? 'csv' : 'text';
      done(await trays(outside, { ...given, hole, photos: options.photos, as }));
    });
}
