import { amountBesidePair, keysOfPair } from '../check/check-key-runs.ts';
import { NO_RETURN_WORD } from '../check/check-strokes.ts';
import { isPair, slipsOf } from '../check/keyboard.ts';
import { type Field, type LoggingSchema, listOf } from '../logging-schema.ts';
import { couldBeEither, type Stroke, strokesOf, takesOf } from '../strokes.ts';

const LETTERS = [...'abcdefghijklmnopqrstuvwxyz'];

/** A pair proposed for a code. */
export type ProposedPair = { readonly list: string; readonly code: string; readonly pair: string };

/**
 * Pairs for the codes of a schema that have none, in the order of the log sheet: letters of the label where they stand apart
 * from everything that is typed already, any letters otherwise. A code is left out where no pair is left that is safe within its field.
 */
export function proposePairs(schema: LoggingSchema): readonly ProposedPair[] {
  const taken = [...strokesOf(schema)];
  const proposed: ProposedPair[] = [];
  const done = new Set<string>();
  for (const field of schema.fields) {
    const list = listOf(schema, field);
    if (list === undefined || done.has(list.name)) continue;
    done.add(list.name);
    for (const code of list.codes) {
      if (code.pair !== undefined || code.retiredSince !== undefined) continue;
      const pair = pairFor(schema, field, code.label, taken);
      if (pair === undefined) continue;
      const part = { list: list.name, code: code.code };
      taken.push({ strokes: pair, is: 'pair', field, code, takes: takesOf(field), label: code.label, part });
      proposed.push({ ...part, pair });
    }
  }
  return proposed;
}

/** The first of a label's pairs that is free and apart from all others, else apart from those of its own field; undefined where none is. */
function pairFor(
  schema: LoggingSchema,
  field: Field,
  label: string,
  taken: readonly Stroke[],
): string | undefined {
  const free = candidates(label).filter((pair) => !taken.some((stroke) => stroke.strokes === pair));
  const takes = takesOf(field);
  const keys = taken.filter((stroke) => stroke.is === 'key');
  const near = (pair: string, others: readonly Stroke[]): boolean => {
    const slips = slipsOf(pair);
    return others.some(
      (other) =>
        (couldBeEither({ takes }, other) && slips.includes(other.strokes)) ||
        (other.is === 'key' && amountBesidePair(schema, other, { strokes: pair, takes }) !== undefined),
    );
  };
  const apart = (pair: string): boolean =>
    !near(pair, taken) && keysOfPair(keys, { strokes: pair, takes }) === undefined;
  const own = taken.filter((stroke) => stroke.field.name === field.name);
  return free.find(apart) ?? free.find((pair) => !near(pair, own));
}

/** Pairs for a label, the easiest to remember first: initials of words, the first letter with a later one, later ones, any. */
function candidates(label: string): readonly string[] {
  const words = label
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter((word) => word !== '');
  const letters = words.join('');
  const initials = words.slice(1).map((word) => `${letters[0]}${word[0]}`);
  const consonants = [...letters.slice(1)].sort((a, b) => Number(isVowel(a)) - Number(isVowel(b)));
  const withFirst = consonants.map((letter) => `${letters[0]}${letter}`);
  const later = [...letters].flatMap((a, index) => [...letters.slice(index + 1)].map((b) => a + b));
  const any = LETTERS.flatMap((a) => LETTERS.map((b) => a + b));
  const reserved = [NO_RETURN_WORD, ...slipsOf(NO_RETURN_WORD)];
  return [...new Set([...initials, ...withFirst, ...later, ...any])].filter(
    (pair) => isPair(pair) && !reserved.includes(pair),
  );
}

function isVowel(letter: string): boolean {
  return 'aeiou'.includes(letter);
}

/** A code for a new term by the starter styles' rule: three letters of it, its first in front, in their order, not yet used in the project. */
export function proposeCode(schema: LoggingSchema, label: string): string | undefined {
  const used = new Set(
    Object.values(schema.lists).flatMap((list) => list.codes.map((code) => code.code.toUpperCase())),
  );
  const letters = [...label.toUpperCase().replace(/[^A-Z]/g, '')];
  const rest = letters.slice(1);
  const codes = rest.flatMap((b, index) => rest.slice(index + 1).map((c) => `${letters[0]}${b}${c}`));
  return codes.find((code) => !used.has(code));
}
