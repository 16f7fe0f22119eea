import { COMMAND_WORDS, COMMANDS } from '../shorthand/commands.ts';
import type { Suggestion } from '../shorthand/said.ts';
import { KEYS } from './keys.ts';

/** Every word behind `;` on the log with what it does: commands of the entry line, then screens and keys. */
export function lineWords(): readonly Suggestion[] {
  return [
    ...COMMAND_WORDS,
    ...KEYS.flatMap(({ word, on, help }) =>
      word !== undefined &&
      (on === 'any' || on.includes('log')) &&
      !COMMANDS.some((each) => each.word === word)
        ? [{ text: word, label: `;${word}: ${help}` }]
        : [],
    ),
  ];
}
