import type { Command } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, inLines, shared } from './options.ts';

const FORMS = `
One line, as F8 in the console takes it:
  activity breakdown 14:20 hydraulic hose   from 14:20 on; without a time from now on
  activity standby 14:20-14:50 by Ines Falk: no water
  activity 14:20 14:35                      the activity at 14:20 started at 14:35
  activity split 15:00, remove 14:20, begin 06:00, end 18:00
  activity crew Bo, Cy; used 1 hammer bit; bit 139.7; water 62
Without a line they are read from stdin, one a line, # starts a comment.`;

/** Adds the commands that are about shifts. */
export function addShiftCommands(program: Command, outside: Outside, done: Done): void {
  program
    .command('shift')
    .description('what a shift did, and the query list against its plod')
    .argument('[shift]', 'its date (2026-03-12) or whole name; the latest if not said')
    .action(async (shift, _options, command: Command) => {
      const shifts = await import('../shift.ts');
      done(await shifts.shift(outside, { ...shared(command), shift }));
    });
  program
    .command('activity')
    .description('record what the rig does, or amend the shift record')
    .argument('[line...]', 'one line of the shift record; from stdin if none is given')
    .option(
      '--shift <name>',
      'whole name of the shift (RC7_2026-03-12_DAY); the latest of the rig if not given',
    )
    .option('--keep-going', 'go on after a line that is not taken')
    .addHelpText('after', FORMS)
    .action(async (line: readonly string[], { shift, keepGoing }, command: Command) => {
      const { activity } = await import('../activity.ts');
      const given = { ...shared(command), line: line.join(' '), shift, keepGoing: keepGoing === true };
      done(await inLines(outside, command, (printing) => activity(printing, given)));
    });
}
