import type { NamedMismatch, RodCheck } from '../../sampling/rod-check.ts';

/** One way to mend a mismatch, as the prompt numbers it: the mismatch, the place, and which of its ways it is. */
export type MismatchWay = NamedMismatch['ways'][number] & {
  readonly named: NamedMismatch;
  readonly index: number;
};

/** Ways on one page: a single figure picks one, and they fit on a small screen. */
const ON_A_PAGE = 6;

/** Kinds and places of each that stand on the first page. */
const FIRST_KINDS = 3;
const FIRST_PLACES = 2;

/** The ways to mend a mismatch on a page: first the two likeliest places of the three likeliest kinds, then all the others. */
export function waysOn(check: RodCheck, page: number): readonly MismatchWay[] {
  return allWays(check).slice(page * ON_A_PAGE, (page + 1) * ON_A_PAGE);
}

/** Pages that the ways fill. */
export function pagesOf(check: RodCheck): number {
  return Math.ceil(allWays(check).length / ON_A_PAGE);
}

function allWays(check: RodCheck): readonly MismatchWay[] {
  const all = check.named.flatMap((named, kind) =>
    named.ways.map((way, index) => ({
      ...way,
      named,
      index,
      first: kind < FIRST_KINDS && index < FIRST_PLACES,
    })),
  );
  return [...all.filter((way) => way.first), ...all.filter((way) => !way.first)];
}
