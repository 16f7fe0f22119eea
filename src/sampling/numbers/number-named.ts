import { type FindingKind, ok, type Result, refused } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { Sampling } from '../sampling.ts';
import type { StreamState } from '../stream/stream.ts';
import { endsWithDigits, formatBagNumber, type NumberForm, parseBagNumber } from './bag-number.ts';
import { numberLine } from './number-line.ts';

/** How a number that names none, or more than one, is refused: the kind of finding and its place, and the words where nothing ends so. */
export interface NumberRefusal {
  readonly kind: FindingKind;
  readonly place: Place;
  readonly problem: string;
  readonly remedy: string;
}

/**
 * The one number that a text means, wherever a bag is named: a whole number of this form as it is, else the only one of `numbers` that ends so, with
 * or without the prefix in front, in capitals or not. Refused where none does, or more than one: then they are named.
 */
export function numberAmong(
  form: NumberForm,
  numbers: Iterable<string>,
  text: string,
  refusal: NumberRefusal,
): Result<string> {
  const found = numbersMeant(form, numbers, text);
  const [number] = found;
  if (number !== undefined && found.length === 1) return ok(number);
  const { kind, place, problem, remedy } = refusal;
  return refused(kind.at(place, number === undefined ? { problem, remedy } : severalEnd(text, found)));
}

/** What is wrong with digits that end several numbers: those numbers, as many as can be read at a glance. */
export function severalEnd(text: string, numbers: readonly string[]) {
  const named = numbers.slice(0, 3);
  const more = numbers.length - named.length;
  const list =
    more > 0
      ? `${named.join(', ')} and ${more} more`
      : `${named.slice(0, -1).join(', ')} and ${named.at(-1)}`;
  return { problem: `${list} end in ${text}`, remedy: 'Type more digits of the one that is meant.' };
}

/** Every number that a text can mean: the whole one that it is, else those of `numbers` that end so, each once. */
export function numbersMeant(form: NumberForm, numbers: Iterable<string>, text: string): readonly string[] {
  const typed = text.toUpperCase();
  const whole = parseBagNumber(form, typed);
  if (whole !== undefined) return [formatBagNumber(form, whole)];
  const digits = lastDigits(form, typed);
  return [...new Set(numbers)].filter((number) => digits.some((each) => endsWithDigits(number, each)));
}

/** Numbers of a hole: those labelled for it, and those on its bags. */
export function numbersOfHole(sampling: Sampling, { bagRuns, bags }: StreamState): readonly string[] {
  const line = numberLine(sampling.numbers, bagRuns);
  const labelled = Array.from({ length: line.length }, (_, place) => line.at(place) ?? '');
  return [...labelled, ...bags.map((bag) => bag.number)];
}

/** What is typed as the end of a number: as it is, and without the prefix in front (`ZQ163`). */
export function lastDigits({ prefixes }: NumberForm, text: string): readonly string[] {
  const behind = prefixes.filter((each) => text.startsWith(each)).map((each) => text.slice(each.length));
  return [text, ...behind].filter((each) => /\d$/.test(each));
}
