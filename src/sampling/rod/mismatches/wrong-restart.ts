import type { Bag } from '../../../hole/bags.ts';
import { endsWithDigits } from '../../numbers/bag-number.ts';
import {
  freeOfKind,
  layWith,
  type MismatchKind,
  type Situation,
  type Supposition,
  withAndWithoutTail,
  without,
} from '../mismatch.ts';

/** Places on the number line that are looked at: the nearest ones ahead that end in the digits read. */
const NEAREST = 3;

/** After a break the stream went on from another bundle. */
export const wrongRestart: MismatchKind = {
  code: 'wrong-restart',
  name: 'a wrong restart',
  happened: 'The bags went on from the wrong number after a break.',
  claims: ['the row went on from another number'],
  ground:
    'Bags filled under later numbers keep them, and those left out are not used in this hole. On bags filled under numbers used above, write the numbers of this rod.',
  nearSplitter: true,
  suppose: (situation) => [...aheadOf(situation), ...backAmong(situation)],
};

/** The stream jumped ahead to a later bundle of this hole. */
function aheadOf(situation: Situation): readonly Supposition[] {
  const { line, seen, samples, expected } = situation;
  const end = line.placeOf(expected.at(-1)?.number ?? '');
  if (seen.digits === undefined || end === undefined) return [];
  const places = placesEndingIn(situation, seen.digits).filter((place) => place > end + 1);
  return places.slice(0, NEAREST).flatMap((lastPlace) =>
    samples
      .flatMap((_, before) => uppersOf(situation, before).map((upper) => ({ upper, before })))
      .flatMap(({ upper, before }) => {
        const fromPlace = (line.placeOf(upper.at(-1)?.number ?? '') ?? startOf(situation) - 1) + 1;
        return layJumped(situation, fromPlace, lastPlace, samples.length - before).map((issue) => ({
          at: line.at(fromPlace) ?? '',
          fix: { issue },
          weight: weightOf(situation) / samples.length,
        }));
      }),
  );
}

/** Bags of the first samples of the rod, as they may lie when the stream jumps: sachets that end them are in, or left behind. */
function uppersOf(situation: Situation, before: number): readonly (readonly Bag[])[] {
  const upper = layWith(situation, {}, situation.samples.slice(0, before));
  return before === 0 && upper.length > 0 ? [upper, []] : withAndWithoutTail(upper);
}

/** The bags when the numbers from one place on were left out so far that the rod still ends on another place. */
function layJumped(
  situation: Situation,
  fromPlace: number,
  lastPlace: number,
  samples: number,
): readonly (readonly Bag[])[] {
  const { line } = situation;
  const metres = new Set(freeOfKind(situation, (kind) => kind === 'primary', line.length).map(line.placeOf));
  const restarts = Array.from({ length: 2 * samples }, (_, index) => lastPlace - index);
  const between = (restart: number): number =>
    restarts.filter((place) => place >= restart && metres.has(place)).length;
  return restarts
    .filter((restart) => restart > fromPlace && between(restart) === samples)
    .map((restart) => {
      const left = Array.from(
        { length: restart - fromPlace },
        (_, index) => line.at(fromPlace + index) ?? '',
      );
      return layWith(situation, without(situation, left));
    })
    .flatMap(withAndWithoutTail)
    .filter((bags) => bags.at(-1)?.number === line.at(lastPlace));
}

/** The stream went back to numbers that are issued already: the bags are written again. */
function backAmong(situation: Situation): readonly Supposition[] {
  const { line, seen, expected } = situation;
  if (seen.digits === undefined) return [];
  const start = startOf(situation);
  return placesEndingIn(situation, seen.digits)
    .filter((place) => place < start - 1)
    .slice(-1)
    .map((place) => ({
      at: line.at(place) ?? '',
      read: { last: line.at(place) ?? '' },
      fix: { issue: expected },
      deed: 'write the numbers of this rod on its calicos, in their order',
      weight: weightOf(situation) / 4,
    }));
}

function placesEndingIn({ line }: Situation, digits: string): readonly number[] {
  return Array.from({ length: line.length }, (_, place) => place).filter((place) =>
    endsWithDigits(line.at(place) ?? '', digits),
  );
}

function startOf({ line, expected }: Situation): number {
  return line.placeOf(expected[0]?.number ?? '') ?? 0;
}

/**
 * A wrong restart needs a stop to restart from; which of some sixty numbers it goes on from is any of them. Behind a break a bundle of this hole is
 * taken up wrongly more often than one of another hole (common practice).
 */
function weightOf({ seen }: Situation): number {
  return seen.afterBreak === true ? 0.2 : 0.005;
}
