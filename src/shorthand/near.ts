import { neighboursOnKeyboard } from '../schema/check/keyboard.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import type { Suggestion } from './said.ts';
import { labelOf, type Typed, typingIndex } from './typing-index.ts';

/** Up to four pairs that `letters` could have been meant for, the likeliest first. */
export function nearPairs(schema: LoggingSchema, letters: string): readonly Suggestion[] {
  return [...typingIndex(schema).pairs]
    .map(([pair, typed]) => ({ text: pair, ...named(schema, typed, letters, pair) }))
    .filter(({ likeness }) => likeness > 0)
    .sort((a, b) => b.likeness - a.likeness || a.text.localeCompare(b.text))
    .slice(0, 4)
    .map(({ text, label }) => ({ text, label }));
}

function named(
  schema: LoggingSchema,
  typed: Typed,
  letters: string,
  pair: string,
): { label: string; likeness: number } {
  const label = labelOf(schema, typed.field, typed.code?.code);
  return { label, likeness: likenessOf(letters, pair, label, typed.code?.code ?? typed.field.name) };
}

/** A name that begins so comes first, then letters swapped, then a name that they are short for, then one of the two beside its key, then one of the two alike. */
function likenessOf(letters: string, pair: string, label: string, code: string): number {
  if (label.toLowerCase().startsWith(letters) || code.toLowerCase().startsWith(letters)) return 4;
  if (letters.length === 2 && isShortFor(letters, label)) return 2.5;
  if (letters.length !== 2) return pair[0] === letters[0] ? 1 : 0;
  const [first = '', second = ''] = letters;
  if (pair === second + first) return 3;
  const alike = Number(pair[0] === first) + Number(pair[1] === second);
  if (alike === 0) return 0;
  const [was = '', meant = ''] = pair[0] === first ? [second, pair[1]] : [first, pair[0]];
  return neighboursOnKeyboard(was).includes(meant) ? 2 : 0;
}

/** True where two letters stand for a word as an abbreviation does: its first letter and a later one, as `tm` for tourmaline. */
function isShortFor(letters: string, label: string): boolean {
  const [first = '', second = ''] = letters;
  const [word = ''] = label.toLowerCase().split(/[^\p{L}\p{N}]+/u);
  return word.startsWith(first) && word.slice(1).includes(second);
}

/** Up to four words out of `known` that `word` could have been meant for: same start, or one letter away. */
export function nearWords(word: string, known: readonly string[]): readonly string[] {
  return known
    .filter(
      (each) => each.startsWith(word) || (word.length > 1 && word.startsWith(each)) || isOneAway(word, each),
    )
    .slice(0, 4);
}

/** One letter changed, left out or put in, or two neighbouring letters swapped. */
function isOneAway(a: string, b: string): boolean {
  if (a.length > b.length) return isOneAway(b, a);
  const from = [...a].findIndex((letter, index) => letter !== b[index]);
  if (from < 0) return b.length - a.length <= 1;
  if (a.length < b.length) return a.slice(from) === b.slice(from + 1);
  const swapped =
    a[from] === b[from + 1] && a[from + 1] === b[from] && a.slice(from + 2) === b.slice(from + 2);
  return swapped || a.slice(from + 1) === b.slice(from + 1);
}
