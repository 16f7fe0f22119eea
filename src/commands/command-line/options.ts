import { type Command, CommanderError } from 'commander';
import { EXIT } from '../say.ts';

/** Takes the exit code of a command that has run. */
export type Done = (code: number) => void;

/** A command with the option that names the folder of the project. */
export function withProject(command: Command): Command {
  return command.option('--project <folder>', 'folder of the project', '.');
}

/** A command with the option that says who signs. */
export function withWho(command: Command): Command {
  return command.option('--by <initials>', 'who signs; the first geologist of project.json if not said');
}

/** A command that is about one hole and prints text, or data with --json. */
export function oneHole(program: Command, name: string, description: string): Command {
  return withProject(program.command(name))
    .description(description)
    .argument('<hole>', 'the hole')
    .option('--json', 'as data');
}

/** A whole number given to an option; what is none is a wrong use. */
export function wholeNumber(text: string): number {
  if (!/^\d{1,9}$/.test(text))
    throw new CommanderError(EXIT.wrongUse, 'wrong-number', `error: ${text} is no whole number`);
  return Number(text);
}
