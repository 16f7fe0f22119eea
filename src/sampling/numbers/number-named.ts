import type { Bag } from '../../hole/bags.ts';
import type { Sampling } from '../sampling.ts';
import { lastPlace, type StreamState } from '../stream/stream.ts';
import { endsWithDigits, formatBagNumber, type NumberForm, parseBagNumber } from './bag-number.ts';
import { numberLine } from './number-line.ts';

/**
 * The number that is meant by a whole one, or by its last digits with or without the prefix: of those labelled for this hole or placed in it
 * by hand, the nearest to the last one issued. Undefined where none of them ends so.
 */
export function numberNamed(sampling: Sampling, state: StreamState, text: string): string | undefined {
  const whole = parseBagNumber(sampling.numbers, text);
  if (whole !== undefined) return formatBagNumber(sampling.numbers, whole);
  const line = numberLine(sampling.numbers, state.bagRuns);
  const last = lastPlace(sampling, state, line);
  const digits = lastDigits(sampling.numbers, text);
  const [nearest] = Array.from({ length: line.length }, (_, place) => ({
    place,
    number: line.at(place) ?? '',
  }))
    .filter(({ number }) => digits.some((each) => endsWithDigits(number, each)))
    .sort((a, b) => Math.abs(a.place - last) - Math.abs(b.place - last));
  const fromOutside = (bag: Bag): boolean =>
    line.placeOf(bag.number) === undefined && digits.some((each) => endsWithDigits(bag.number, each));
  return nearest?.number ?? state.bags.find(fromOutside)?.number;
}

/** What is typed as the end of a number: as it is, and without the prefix in front (`ZQ163`). */
function lastDigits({ prefixes }: NumberForm, text: string): readonly string[] {
  const behind = prefixes.filter((each) => text.startsWith(each)).map((each) => text.slice(each.length));
  return [text, ...behind].filter((each) => /\d$/.test(each));
}
