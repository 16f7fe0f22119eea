import type { Command } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, wholeNumber, withProject, withWho } from './options.ts';

/** Adds the commands that are about a project as a whole. */
export function addProjectCommands(program: Command, outside: Outside, done: Done): void {
  addNew(program, outside, done);
  addLists(program, outside, done);
  addCamp(program, outside, done);
}

function addNew(program: Command, outside: Outside, done: Done): void {
  program
    .command('new')
    .description('start a project in a new folder, from a style')
    .argument('<folder>', 'folder to make')
    .option('--style <name>', 'style of the logging schema', 'orogenic-gold')
    .option(
      '--program <file>',
      'CSV of planned holes: hole, easting, northing, elevation, azimuth, north, dip, depth, and if known target, target depth, expects (lode 70-78 seen sulphides PYR>=2; stope 80-84 void)',
    )
    .option('--epsg <code>', 'EPSG code of the grid of its eastings and northings', wholeNumber)
    .option('--keep-going', 'take the sound lines of the program in though others are bad')
    .action(async (folder, options) => {
      const { newProject } = await import('../new-project.ts');
      done(await newProject(outside, { folder, ...options, keepGoing: options.keepGoing === true }));
    });
}

function addCamp(program: Command, outside: Outside, done: Done): void {
  withWho(withProject(program.command('pack')))
    .description('pack for camp: a bundle and a mail draft in the folder outbox; nothing is sent')
    .argument('[names...]', 'holes, and shifts by name or date; everything if none is named')
    .action(async (names: readonly string[], options) => {
      const { pack } = await import('../pack.ts');
      done(await pack(outside, { folder: options.project, by: options.by, names }));
    });
  withWho(withProject(program.command('receive')))
    .description('take in what arrives: newer copies taken, diverged ones merged, nothing lost')
    .argument(
      '<files...>',
      'bundles, saved mails (.eml) with such attached, or files of holes, shifts, dispatches and results by themselves',
    )
    .action(async (files: readonly string[], options) => {
      const { receive } = await import('../camp.ts');
      done(await receive(outside, { folder: options.project, by: options.by, files }));
    });
}

function addLists(program: Command, outside: Outside, done: Done): void {
  withProject(program.command('holes'))
    .description('list the holes with their states')
    .option('--json', 'as data')
    .option('--history <hole>', 'every edit of one hole: who, when, what stood before and after')
    .option(
      '--after <edit>',
      'with --history: the hole as it stood after the edit of this number',
      wholeNumber,
    )
    .action(async (options) => {
      const { holes } = await import('../holes.ts');
      done(
        await holes(outside, {
          folder: options.project,
          json: options.json === true,
          history: options.history,
          after: options.after,
        }),
      );
    });
  withProject(program.command('check'))
    .description('hold the project, or one hole, against every check')
    .argument('[hole]', 'only this hole')
    .option('--json', 'as data')
    .action(async (hole, options) => {
      const { check } = await import('../check.ts');
      done(await check(outside, { folder: options.project, hole, json: options.json === true }));
    });
  withProject(program.command('shift'))
    .description('what a shift did, and the query list against its plod')
    .argument('[shift]', 'its date (2026-03-12) or whole name; the latest if not said')
    .option('--json', 'as data')
    .action(async (shift, options) => {
      const shifts = await import('../shift.ts');
      done(await shifts.shift(outside, { folder: options.project, shift, json: options.json === true }));
    });
}
