import { runCommandLine } from '../../src/commands/command-line/run.ts';
import { hear } from '../commands/support/outside.ts';

/** Runs a command line; what it says on either stream, and its exit code. */
export async function run(
  argv: readonly string[],
  stdin = '',
): Promise<{
  readonly said: string;
  readonly out: string;
  readonly err: string;
  readonly code: number;
}> {
  const heard = hear(stdin);
  const code = await runCommandLine(argv, { outside: heard.outside, openConsole: async () => 0 });
  return { said: heard.out() + heard.err(), out: heard.out(), err: heard.err(), code };
}

/** A command as the program itself lists it: its words, and the options that print in another form. */
export interface ListedCommand {
  readonly words: readonly string[];
  readonly forms: readonly string[];
}

/** Options that print the same in another form. */
const FORMS = ['--json', '--csv', '--html', '--svg'];

/** Every command of the program, with those under it, read off its help: a new one can't be forgotten. */
export async function everyCommand(under: readonly string[] = []): Promise<readonly ListedCommand[]> {
  const { said } = await run([...under, '--help']);
  const listed = said.split('\nCommands:\n')[1]?.split('\n\n')[0] ?? '';
  const names = [...listed.matchAll(/^ {2}([a-z][a-z-]*)/gm)].flatMap(([, name]) =>
    name === undefined || name === 'help' ? [] : [name],
  );
  const below = await Promise.all(names.map((name) => everyCommand([...under, name])));
  const forms = FORMS.filter((form) => said.includes(`  ${form}`));
  return [...(under.length === 0 ? [] : [{ words: under, forms }]), ...below.flat()];
}
