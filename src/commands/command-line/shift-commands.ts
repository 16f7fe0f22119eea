import type { Command } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, inLines, shared, wrong } from './options.ts';

const FORMS = `
One line, as F8 in the console takes it:
  activity breakdown 14:20 hydraulic hose   from 14:20 on; without a time from now on
  activity standby 14:20-14:50 by Ines Falk: no water
  activity 14:20 14:35                      the activity at 14:20 started at 14:35
  activity 14:20 -by -hole                  take that out of it; also -beside, -used, -remark, -end
  activity split 15:00, remove 14:20, begin 06:00, end 18:00, overtime 19:30
  activity remove bit 14:20, remove water 14:20
  activity crew Bo, Cy; used 1 hammer bit; bit 139.7; water 62
Without a line they are read from stdin, one a line, # starts a comment.`;

const PLOD_LINES = `
The lines come from stdin, one an activity, # starts a comment:
  06:00-07:30 drilling MBRC001 0-54
  -1100 d -72                 from where the line above ended, in time and in metres
  1:30h standby               hours, where the sheet has no times
  -1120 v 2sh                 survey shots
  -1200 m used 1 hammer bit: worn
  -1230 'daywork'             as the sheet calls it, not in our list
  crew Bo Hale, Cy Tan        the crew as the sheet names it; remark … for the whole sheet
All of it is recorded or nothing; every line that can't be taken is named.`;

/** Adds the commands that are about shifts. */
export function addShiftCommands(program: Command, outside: Outside, done: Done): void {
  addPlod(program, outside, done);
  addNote(program, outside, done);
  program
    .command('shift')
    .description('what a shift did, and the query list against its plod')
    .argument('[shift]', 'its date (2026-03-12) or whole name; the latest if left out')
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
      'whole name of the shift (RC7_2026-03-12_DAY); the latest of the rig if left out',
    )
    .option('--keep-going', 'go on after a line that is not taken')
    .addHelpText('after', FORMS)
    .action(async (line: readonly string[], { shift, keepGoing }, command: Command) => {
      const { activity } = await import('../activity.ts');
      const given = { ...shared(command), line: line.join(' '), shift, keepGoing: keepGoing === true };
      done(await inLines(outside, command, (printing) => activity(printing, given)));
    });
}

const OBJECTS = {
  '<query>': 'its name in the query list: metres MBRC001, or 15:05',
  '<line>': 'number of the line; before it that of the sheet where the shift has two',
  '[sheet]': 'number of the sheet',
  '<sheet>': 'number of the sheet',
} as const;

const SHIFT_OPTION = [
  '--shift <name>',
  'whole name of the shift (RC7_2026-03-12_DAY); the latest of the rig if left out',
] as const;

function addPlod(program: Command, outside: Outside, done: Done): void {
  const plod = program
    .command('plod')
    .description('the driller’s sheets: record, list, reconcile, answer queries, sign')
    .option(
      '--reconcile <span>',
      'first and last day, 2026-03-12..2026-03-18: totals, queries, the invoice expected',
    )
    .option('--csv', 'with --reconcile: its lines for a spreadsheet')
    .option('--html', 'with --reconcile: a page to print')
    .action(async ({ reconcile, csv, html }, command: Command) => {
      const given = shared(command);
      if (reconcile === undefined) {
        if (csv === true || html === true)
          wrong(command, '--csv and --html are forms of --reconcile: give a span');
        const { listPlods } = await import('../plod.ts');
        return done(await listPlods(outside, given));
      }
      const { reconcileSpan } = await import('../reconcile.ts');
      const as = csv === true ? 'csv' : html === true ? 'html' : given.json ? 'json' : 'text';
      done(await reconcileSpan(outside, { ...given, span: reconcile, as }));
    });
  plod
    .command('new')
    .description('record a sheet: lines from stdin, or a CSV')
    .argument('<sheet>', 'number of the sheet')
    .option(...SHIFT_OPTION)
    .option('--from <name>', 'who handed it over')
    .option('--crew <names>', 'the crew as the sheet names it: "Bo Hale, Cy Tan"')
    .option('--remark <words>', 'a remark on the whole sheet')
    .option('--from-csv <file>', 'a CSV, read by shift.plodColumns of project.json')
    .option('--second', 'a second sheet of a shift that has one')
    .option('--as-written', 'take overlaps, and metres that the hole hasn’t got, as the sheet has them')
    .addHelpText('after', PLOD_LINES)
    .action(async (sheet, { shift, from, crew, remark, fromCsv, second, asWritten }, command: Command) => {
      const { newPlod } = await import('../plod.ts');
      const asked = {
        sheet,
        shift,
        from,
        crew,
        remark,
        csv: fromCsv,
        second: second === true,
        asWritten: asWritten === true,
      };
      done(
        await inLines(outside, command, (printing) => newPlod(printing, { ...shared(command), ...asked })),
      );
    });
  for (const [word, object, description] of [
    ['agree', '<query>', 'a query: the sheet is right; say why'],
    ['correct', '<query>', 'a query: the sheet is wrong, and was corrected'],
    ['open', '<query>', 'a query stays open'],
    ['line', '<line>', 'a line was taken down wrong: its number, then the whole line; the first is kept'],
    ['sign', '[sheet]', 'sign a sheet, with the queries that are open named'],
    ['withdraw', '<sheet>', 'take an unsigned sheet out, to record it again'],
  ] as const)
    plod
      .command(word)
      .description(description)
      .argument(object, OBJECTS[object])
      .argument('[remark...]', word === 'line' ? 'the line, like 10:45-11:10 v 2sh' : 'what was said')
      // A line of a sheet may begin with -1120, or have -72 for its metres.
      .allowUnknownOption(word === 'line')
      .option(...SHIFT_OPTION)
      .action(async (number: string | undefined, remark: readonly string[], { shift }, command: Command) => {
        const { plodLine } = await import('../plod.ts');
        const line = [word, number ?? '', ...remark].join(' ');
        done(
          await inLines(outside, command, (printing) =>
            plodLine(printing, { ...shared(command), line, shift }),
          ),
        );
      });
}

function addNote(program: Command, outside: Outside, done: Done): void {
  const note = program
    .command('note')
    .description('the note for the next crew, drafted from the records')
    .option('--html', 'a page to print')
    .option(
      '--swing [from]',
      'for a swing from that day on; since the last one handed over if no day is given',
    )
    .option('--shift <name>', 'whole name of an earlier shift: the note that was completed in it')
    .action(async ({ html, swing, shift }, command: Command) => {
      const notes = await import('../note.ts');
      const given = shared(command);
      done(
        await notes.note(outside, {
          ...given,
          swing,
          shift,
          as: html === true ? 'html' : given.json ? 'json' : 'text',
        }),
      );
    });
  for (const [word, line, description] of [
    [
      'complete',
      'note',
      'complete the note: the draft as it is, and what you add; swing first hands over a swing',
    ],
    ['acknowledge', 'acknowledge', 'you have read the latest note and take over'],
  ] as const) {
    const command = note.command(word).description(description);
    if (word === 'complete') command.argument('[words...]', 'what the records do not say');
    command.action(async (...given: readonly unknown[]) => {
      const self = given.at(-1) as Command;
      const words = word === 'complete' ? (given[0] as readonly string[]) : [];
      const { noteLine } = await import('../note.ts');
      const text = [line, ...words].join(' ');
      done(await inLines(outside, self, (printing) => noteLine(printing, { ...shared(self), line: text })));
    });
  }
}
