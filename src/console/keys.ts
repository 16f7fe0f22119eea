import { COMMAND_WORDS, COMMANDS } from '../shorthand/commands.ts';
import type { Suggestion } from '../shorthand/said.ts';
import type { Binding, ScreenName } from './keys/binding.ts';
import { EVERYWHERE_KEYS } from './keys/everywhere.ts';
import { HOLE_SCREEN_KEYS } from './keys/hole-screens.ts';
import { HOLES_KEYS } from './keys/holes.ts';
import { LABORATORY_KEYS } from './keys/laboratory.ts';
import { LINE_UP_KEYS } from './keys/line-up.ts';
import { LIST_KEYS } from './keys/lists.ts';
import { LOG_KEYS } from './keys/log.ts';
import { PACKING_KEYS } from './keys/packing.ts';
import { READING_KEYS } from './keys/readings.ts';
import { SHIFT_KEYS } from './keys/shift.ts';
import { SURVEY_KEYS } from './keys/survey.ts';

export type { Binding, ScreenName } from './keys/binding.ts';

/** Every key of the console, in the order of the help; hints of a screen's own keys come first. A key that stands twice for one screen fails a test. */
export const KEYS: readonly Binding[] = [
  ...LOG_KEYS,
  ...HOLES_KEYS,
  ...LIST_KEYS,
  ...SURVEY_KEYS,
  ...LINE_UP_KEYS,
  ...READING_KEYS,
  ...LABORATORY_KEYS,
  ...PACKING_KEYS,
  ...SHIFT_KEYS,
  ...HOLE_SCREEN_KEYS,
  ...EVERYWHERE_KEYS,
];

/** The binding of a key on a screen, or undefined. */
export function bindingFor(screen: ScreenName, key: string): Binding | undefined {
  return KEYS.find(
    (binding) => (binding.on === 'any' || binding.on.includes(screen)) && binding.keys.includes(key),
  );
}

/** The binding that a word behind `;` names, on the log. */
export function bindingForWord(word: string): Binding | undefined {
  return KEYS.find(
    (binding) => binding.word === word && (binding.on === 'any' || binding.on.includes('log')),
  );
}

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
