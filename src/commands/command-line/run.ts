import { Command, CommanderError } from 'commander';
import about from '../../../package.json' with { type: 'json' };
import type { Outside } from '../../desk/outside.ts';
import { safeLines } from '../../finding/safe-text.ts';
import { WHAT_IT_IS_NOT } from '../../finding/what-it-is-not.ts';
import type { Shared } from '../at-project.ts';
import { EXIT } from '../say.ts';
import { addDispatchCommands } from './dispatch-commands.ts';
import { addHoleCommands } from './hole-commands.ts';
import { addSharedOptions, type Done, folderOf, inLines, shared, wrong } from './options.ts';
import { addProjectCommands } from './project-commands.ts';
import { addQuestionsCommand } from './questions-command.ts';
import { addReadingCommands } from './reading-commands.ts';
import { addRecoverCommand } from './recover-command.ts';
import { addResultsCommands } from './results-commands.ts';
import { addSchemaCommands } from './schema-commands.ts';
import { addShiftCommands } from './shift-commands.ts';
import { addSurveyCommands } from './survey-commands.ts';
import { addTraysCommand } from './tray-commands.ts';

/** What the console is opened with. */
export interface ConsoleAsked extends Shared {
  readonly json: boolean;
  readonly readOnly: boolean;
  readonly takeOver: boolean;
}

/** What the command line is lent: the world, and the way to open the console (which is beside the commands). */
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

/** Every command with its options and help. */
export function commandLine(needs: CommandLineNeeds, done: Done): Command {
  const { outside } = needs;
  const program = new Command('offsider')
    .description('A keyboard console for the geologist on a reverse-circulation drill rig.')
    .version(about.version, '--version', 'print the version')
    .helpOption('-h, --help', 'print this')
    .exitOverride()
    .configureOutput({
      writeOut: (text) => outside.stdout.write(safeLines(text)),
      writeErr: (text) => outside.stderr.write(safeLines(text)),
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    })
    .addHelpText(
      'after',
      '\nExit codes: 0 fine, 1 something was found, 2 wrong use or it cannot be opened.\nA folder that is called like a command is opened by its path: offsider ./holes' +
        `\n\n${WHAT_IT_IS_NOT}`,
    );
  addSharedOptions(program);
  addConsole(program, needs, done);
  addProjectCommands(program, outside, done);
  addHoleCommands(program, outside, done);
  addSurveyCommands(program, outside, done);
  addDispatchCommands(program, outside, done);
  addResultsCommands(program, outside, done);
  addTraysCommand(program, outside, done);
  addQuestionsCommand(program, outside, done);
  addReadingCommands(program, outside, done);
  addRecoverCommand(program, outside, done);
  addShiftCommands(program, outside, done);
  addSchemaCommands(program, outside, done);
  return program;
}

function addConsole(program: Command, { outside, openConsole }: CommandLineNeeds, done: Done): void {
  program
    .argument('[folder]', 'folder of the project')
    .option('--read-only', 'look, change nothing')
    .option('--take-over', 'open it though another console holds it: only when that one is surely gone')
    .action(async (folder, { readOnly, takeOver }) => {
      const given = { ...shared(program), folder: folderOf(program, folder) ?? '.' };
      const asked = { ...given, readOnly: readOnly === true, takeOver: takeOver === true };
      done(await inLines(outside, program, (printing) => openConsole(printing, asked)));
    });
  program
    .command('demo')
    .description('open a copy of the sample project, outside of this folder')
    .action(async (_options, command: Command) => {
      const { demoFolder, demoOutside } = await import('../demo.ts');
      const given = shared(command);
      if (command.optsWithGlobals().project !== undefined)
        wrong(command, 'the demo is its own project: leave --project out');
      const folder = demoFolder();
      const asked = { ...given, folder, readOnly: false, takeOver: false };
      done(
        await inLines(demoOutside(outside, folder), command, (printing) => {
          printing.stdout.write(`The sample project, copied to ${folder}\n`);
          return openConsole(printing, asked);
        }),
      );
    });
}
