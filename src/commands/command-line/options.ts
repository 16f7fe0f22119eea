import { type Command, InvalidArgumentError } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import type { Shared } from '../at-project.ts';
import { EXIT, sayJson } from '../say.ts';

/** Takes the exit code of a command that has run. */
export type Done = (code: number) => void;

/** The options that mean the same on every command. */
const SHARED = ['--project', '--by', '--rig', '--json'];

/** Forms of an answer that exclude data. */
const OTHER_FORMS = ['csv', 'html', 'svg'];

/**
 * Adds the options that every command takes. They belong to the program and not to its commands, so that they are read before the
 * command's name and after it alike: one that both had would be taken by the program, and the command would sign as someone else.
 */
export function addSharedOptions(program: Command): void {
  program
    .option('--project <folder>', 'folder of the project; this one if not given', once())
    .option(
      '--by <initials>',
      'who signs what is recorded; the first geologist of project.json if not given',
      once(),
    )
    .option('--rig <name>', 'the rig; the first one of project.json if not given', once())
    .option('--json', 'print the answer as data')
    .configureHelp({
      showGlobalOptions: true,
      visibleGlobalOptions: (command) =>
        command.parent === null
          ? []
          : program.options.filter((option) => SHARED.includes(option.long ?? option.flags)),
    })
    .hook('preAction', (_program, command) => {
      const { json } = program.opts();
      const form = OTHER_FORMS.find((each) => command !== program && command.opts()[each] !== undefined);
      if (json === true && form !== undefined)
        wrong(command, `--json and --${form} are two forms: give one of them`);
      if (command === program) return;
      for (const only of ['readOnly', 'takeOver'])
        if (program.opts()[only] === true)
          wrong(
            command,
            `only the console takes --${only === 'readOnly' ? 'read-only' : 'take-over'}: leave it out`,
          );
    });
}

/** An option that can be given once: two people, two rigs or two folders on one line are a slip. */
function once() {
  return (text: string, before: string | undefined): string => {
    if (before !== undefined && before !== text)
      throw new InvalidArgumentError(`It is given twice, the other time as ${before}.`);
    return text;
  };
}

/** Ends a command line that is a wrong use, with what is wrong. */
export function wrong(command: Command, problem: string): never {
  return command.error(`error: ${problem}`, { exitCode: EXIT.wrongUse });
}

/** The shared options as given, with `--json`. */
export function shared(command: Command): Shared & { readonly json: boolean } {
  const { project, by, rig, json } = command.optsWithGlobals();
  return { folder: project ?? '.', by, rig, json: json === true };
}

/** The folder of a command that takes it as its argument too; two different ones are a slip. */
export function folderOf(command: Command, argument: string | undefined): string | undefined {
  const { project } = command.optsWithGlobals();
  if (project !== undefined && argument !== undefined && project !== argument)
    wrong(command, `two folders are given, ${argument} and ${project} (--project): give one of them`);
  return argument ?? project;
}

/** Runs a command that prints lines; with `--json` they come out as data, `{"lines": […]}`. */
export async function inLines(
  outside: Outside,
  command: Command,
  run: (outside: Outside) => Promise<number>,
): Promise<number> {
  if (!shared(command).json) return run(outside);
  const printed: string[] = [];
  const write = (text: string | Uint8Array): boolean => {
    printed.push(String(text));
    return true;
  };
  const code = await run({ ...outside, stdout: Object.assign(Object.create(outside.stdout), { write }) });
  const text = printed.join('').replace(/\r?\n$/, '');
  sayJson(outside, { lines: text === '' ? [] : text.split(/\r?\n/) });
  return code;
}

/** A command that is about one hole. */
export function oneHole(program: Command, name: string, description: string): Command {
  return program.command(name).description(description).argument('<hole>', 'the hole');
}

/** A whole number given to an option; what is none is a wrong use. */
export function wholeNumber(text: string): number {
  if (!/^\d{1,9}$/.test(text)) throw new InvalidArgumentError('It is not a whole number.');
  return Number(text);
}
