import { homedir } from 'node:os';
import { resolve } from 'node:path';

/** The path that a person means by what was typed: `~` is the home folder, anything else counts from where the program was started. */
export function typedPath(text: string): string {
  return resolve(text.replace(/^~(?=$|[/\\])/, () => homedir()));
}
