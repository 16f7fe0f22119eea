import { Command, CommanderError } from 'commander';
import type { Outside } from '../desk/outside.ts';
import { EXIT } from './say.ts';

/** What the console is opened with. */
export interface ConsoleAsked {
  readonly folder: string;
  readonly by?: string | undefined;
  readonly rig?: string | undefined;
  readonly readOnly: boolean;
  readonly takeOver: boolean;
}

/** What the command line is lent: the world, and the way to open the console (which stands beside the commands). */
export interface CommandLineNeeds {
  readonly outside: Outside;
  readonly openConsole: (outside: Outside, asked: ConsoleAsked) => Promise<number>;
}

/** Runs one command line and gives its exit code. A command's own module is loaded only when it is called, so that the console starts fast. */
export async function runCommandLine(argv: readonly string[], needs: CommandLineNeeds): Promise<number> {
  let code: number = EXIT.fine;
  const program = commandLine(needs, (given) => {
    code = given;
  });
  try {
    await program.parseAsync([...argv], { from: 'user' });
    return code;
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? EXIT.fine : EXIT.wrongUse;
  }
}

type Done = (code: number) => void;

/** Every command with its options and help. */
function commandLine(needs: CommandLineNeeds, done: Done): Command {
  const { outside } = needs;
  const program = new Command('offsider')
    .description('A keyboard console for the geologist on a reverse-circulation drill rig.')
    .exitOverride()
    .configureOutput({
      writeOut: (text) => outside.stdout.write(text),
      writeErr: (text) => outside.stderr.write(text),
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    })
    .configureHelp({ showGlobalOptions: false })
    .addHelpText(
      'after',
      '\nExit codes: 0 fine, 1 something was found, 2 wrong use or it cannot be opened.\nA folder that is called like a command is opened by its path: offsider ./holes',
    );
  addConsole(program, needs, done);
  addProjects(program, outside, done);
  addHoles(program, outside, done);
  addCamp(program, outside, done);
  addChecks(program, outside, done);
  addSchema(program, outside, done);
  return program;
}

function addConsole(program: Command, { outside, openConsole }: CommandLineNeeds, done: Done): void {
  const asked = (folder: string, options: Record<string, string | boolean | undefined>): ConsoleAsked => ({
    folder,
    by: options.by as string | undefined,
    rig: options.rig as string | undefined,
    readOnly: options.readOnly === true,
    takeOver: options.takeOver === true,
  });
  withWho(program.argument('[folder]', 'folder of the project', '.'))
    .option('--rig <name>', 'the rig of this console; the first of project.json if not said')
    .option('--read-only', 'look, change nothing')
    .option('--take-over', 'open it though another console holds it: only when that one is surely gone')
    .action(async (folder, options) => done(await openConsole(outside, asked(folder, options))));
  program
    .command('demo')
    .description('open a copy of the sample project, outside of this folder')
    .action(async () => {
      const { demoFolder, demoOutside } = await import('./demo.ts');
      const folder = demoFolder();
      outside.stdout.write(`The sample project, copied to ${folder}\n`);
      done(await openConsole(demoOutside(outside, folder), asked(folder, {})));
    });
}

function addProjects(program: Command, outside: Outside, done: Done): void {
  program
    .command('new')
    .description('start a project in a new folder, from a style')
    .argument('<folder>', 'folder to make')
    .option('--style <name>', 'style of the logging schema', 'orogenic-gold')
    .option(
      '--program <file>',
      'CSV of planned holes: hole, easting, northing, elevation, azimuth, north, dip, depth, and if known target, target depth',
    )
    .option('--epsg <code>', 'EPSG code of the grid of its eastings and northings', wholeNumber)
    .option('--keep-going', 'take the sound lines of the program in though others are bad')
    .action(async (folder, options) => {
      const { newProject } = await import('./new-project.ts');
      done(await newProject(outside, { folder, ...options, keepGoing: options.keepGoing === true }));
    });
}

function addCamp(program: Command, outside: Outside, done: Done): void {
  withWho(withProject(program.command('receive')))
    .description('take copies of holes and shifts in: newer ones taken, diverged ones merged, nothing lost')
    .argument('<files...>', 'files from the folders holes and shifts of another copy of the project')
    .action(async (files, options) => {
      const { receive } = await import('./camp.ts');
      done(await receive(outside, { folder: options.project, by: options.by, files }));
    });
}

function addHoles(program: Command, outside: Outside, done: Done): void {
  withProject(program.command('holes'))
    .description('list the holes with their states')
    .option('--json', 'as data')
    .option('--history <hole>', 'who did what on one hole, when')
    .action(async (options) => {
      const { holes } = await import('./holes.ts');
      done(
        await holes(outside, {
          folder: options.project,
          json: options.json === true,
          history: options.history,
        }),
      );
    });
  withWho(withProject(program.command('enter')))
    .description('log from a file or a pipe: one entry line a line, # starts a comment')
    .argument('<hole>', 'hole to log')
    .option(
      '--keep-going',
      'go on behind a line that is not taken; record a rod whose bags do not agree, with the mismatch noted',
    )
    .addHelpText(
      'after',
      '\nNobody is there to be asked: a line that would be asked about is saved marked, and reported; = at its end insists.\nA change of several rows needs = at its end in the place of its preview. ;rod with digits that do not agree is refused.',
    )
    .action(async (hole, options) => {
      const { enter } = await import('./enter.ts');
      done(
        await enter(outside, {
          folder: options.project,
          hole,
          by: options.by,
          keepGoing: options.keepGoing === true,
        }),
      );
    });
}

function addChecks(_program: Command, _outside: Outside, _done: Done): void {}
function addSchema(_program: Command, _outside: Outside, _done: Done): void {}

function withProject(command: Command): Command {
  return command.option('--project <folder>', 'folder of the project', '.');
}

function withWho(command: Command): Command {
  return command.option('--by <initials>', 'who signs; the first geologist of project.json if not said');
}

function wholeNumber(text: string): number {
  if (!/^\d{1,9}$/.test(text))
    throw new CommanderError(EXIT.wrongUse, 'wrong-number', `error: ${text} is no whole number`);
  return Number(text);
}
