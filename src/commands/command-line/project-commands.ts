import { type Command, Option } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, folderOf, inLines, shared, wholeNumber, wrong } from './options.ts';

/** Adds the commands that are about a project as a whole. */
export function addProjectCommands(program: Command, outside: Outside, done: Done): void {
  addNew(program, outside, done);
  addProgram(program, outside, done);
  addLists(program, outside, done);
  addCamp(program, outside, done);
  addTables(program, outside, done);
  addImport(program, outside, done);
}

function addNew(program: Command, outside: Outside, done: Done): void {
  program
    .command('new')
    .description('start a project in a new folder, from a style')
    .argument('[folder]', 'folder to make')
    .option(
      '--style [name]',
      'style of the logging schema, by the kind of deposit; without a name: lists them',
      'orogenic-gold',
    )
    .option('--dictionary <file>', 'CSV of a schema of your own, in place of a style (schemas/README.md)')
    .option(
      '--program <file>',
      'CSV of planned holes: hole, easting, northing, elevation, azimuth, north, dip, depth, and if known target, target depth, expects (lode 70-78 seen sulphides PYR>=2; stope 80-84 void)',
    )
    .option('--epsg <code>', 'EPSG code of the grid of its eastings and northings', wholeNumber)
    .option('--keep-going', 'take the sound lines of the program in though others are bad')
    .action(async (argument, options, command: Command) => {
      const { listStyles, newProject } = await import('../new-project.ts');
      if (options.style === true) return done(await inLines(outside, command, listStyles));
      const folder = folderOf(command, argument) ?? wrong(command, 'the folder to make is not given');
      if (options.dictionary !== undefined && command.getOptionValueSource('style') === 'cli')
        wrong(command, '--style and --dictionary are both given: a dictionary is a schema of its own');
      const asked = { ...shared(command), ...options, folder, keepGoing: options.keepGoing === true };
      done(await inLines(outside, command, (printing) => newProject(printing, asked)));
    });
}

function addCamp(program: Command, outside: Outside, done: Done): void {
  program
    .command('pack')
    .description(
      'pack for camp what is new since camp acknowledged: a bundle and a mail draft in the folder outbox; nothing is sent',
    )
    .argument('[names...]', 'holes, and shifts by name or date; everything if none is named')
    .option('--with-paths', 'also where a history recorded by an earlier version holds a path of a computer')
    .option('--whole', 'everything in full, whatever was acknowledged')
    .option(
      '--for <initials>',
      'what the copy of this person lacks; for camp, at camp for every rig, if not given',
    )
    .action(async (names: readonly string[], options, command: Command) => {
      const { pack } = await import('../pack.ts');
      const asked = { ...shared(command), names, ...options };
      done(await inLines(outside, command, (printing) => pack(printing, asked)));
    });
  program
    .command('receive')
    .description('take in what arrives: newer copies taken, diverged ones merged, nothing lost')
    .argument(
      '<files...>',
      'bundles, saved mails (.eml) with such attached, or files of holes, shifts, dispatches and results by themselves',
    )
    .option('--may-clear', 'take in a copy that takes much away of ours, too')
    .option(
      '--new <folder>',
      'begin a project in this folder, with the settings and the schema that a bundle brings',
    )
    .action(async (files: readonly string[], options, command: Command) => {
      const asked = { ...shared(command), files, mayClear: options.mayClear === true };
      const begins = options.new as string | undefined;
      if (begins !== undefined) {
        const { receiveNew } = await import('../receive-new.ts');
        return done(
          await inLines(outside, command, (printing) => receiveNew(printing, { ...asked, folder: begins })),
        );
      }
      const { receive } = await import('../camp.ts');
      done(await inLines(outside, command, (printing) => receive(printing, asked)));
    });
}

function addTables(program: Command, outside: Outside, done: Done): void {
  program
    .command('tables')
    .description('flat tables of the project, for a spreadsheet, a database or a map')
    .argument('[names...]', 'tables to print; the list of all if none is named')
    .option(
      '--to <folder>',
      'write all of them into this folder, with a page that says what is in each column',
    )
    .option('--csv', 'print as CSV')
    .action(async (names: readonly string[], { to, csv }, command: Command) => {
      const { tables } = await import('../tables.ts');
      const { json, ...given } = shared(command);
      if (to !== undefined && (names.length > 0 || csv === true))
        wrong(command, '--to writes every table: leave the names and --csv out');
      if (csv === true && names.length !== 1) wrong(command, '--csv prints one table: give its name');
      const run = (printing: Outside) =>
        tables(printing, {
          ...given,
          names,
          to,
          as: csv === true ? 'csv' : json && to === undefined ? 'json' : 'text',
        });
      done(await (to === undefined ? run(outside) : inLines(outside, command, run)));
    });
}

function addImport(program: Command, outside: Outside, done: Done): void {
  program
    .command('import')
    .description(
      'take in holes that others logged, from tables of a spreadsheet; project.json says which column holds what',
    )
    .requiredOption('--collars <file>', 'CSV of the collars, one line a hole, with final depths')
    .option('--surveys <file>', 'CSV of the survey shots')
    .option('--geology <file>', 'CSV of the log, one line an interval')
    .option('--preview', 'show what would come in, write nothing')
    .action(async (options, command: Command) => {
      const { importHoles } = await import('../import.ts');
      done(await importHoles(outside, { ...shared(command), ...options, preview: options.preview === true }));
    });
}

function addProgram(program: Command, outside: Outside, done: Done): void {
  program
    .command('program')
    .description('take a later program of planned holes in: new ones planned, those that are there revised')
    .argument('<file>', 'CSV as for new: hole, easting, northing, elevation, azimuth, north, dip, depth')
    .option('--preview', 'show what would change, write nothing')
    .option('--keep-going', 'take the sound lines in though others are bad')
    .action(async (file, { preview, keepGoing }, command: Command) => {
      const { program: take } = await import('../program.ts');
      done(
        await take(outside, {
          ...shared(command),
          file,
          preview: preview === true,
          keepGoing: keepGoing === true,
        }),
      );
    });
}

function addLists(program: Command, outside: Outside, done: Done): void {
  program
    .command('holes')
    .description('list the holes with their states')
    .option('--history <hole>', 'every edit of one hole: who, when, before and after')
    .option('--after <edit>', 'with --history: the hole after the edit of this number', wholeNumber)
    .action(async ({ history, after }, command: Command) => {
      const { holes } = await import('../holes.ts');
      done(await holes(outside, { ...shared(command), history, after }));
    });
  program
    .command('check')
    .description('hold the project, or one hole, against every check')
    .argument('[hole]', 'only this hole')
    .addOption(
      new Option('--from <severity>', 'exit 1 on open findings at least as bad as this')
        .choices(['note', 'warning', 'fault'])
        .default('warning'),
    )
    .option('--accept <key>', 'accept the finding of that key as it is; with --because')
    .option('--because <reason>', 'why it is accepted')
    .option('--open <key>', 'take back that a finding was accepted')
    .option('--sign-off [remark]', 'sign the hole off: it is checked, and takes no change any more')
    .option('--open-again <reason>', 'open a hole that was signed off')
    .action(async (hole, options, command: Command) => {
      const { check } = await import('../check.ts');
      done(await check(outside, { ...shared(command), hole, ...options }));
    });
}
