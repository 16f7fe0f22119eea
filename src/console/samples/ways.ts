import type { NamedMismatch, RodCheck } from '../../sampling/rod/rod-check.ts';

/** One way to mend a mismatch, as the prompt numbers it: the mismatch, the place, and which of its ways it is. */
export type MismatchWay = NamedMismatch['ways'][number] & {
  readonly named: NamedMismatch;
  readonly index: number;
};

/** Ways on one page: a single figure picks one, and with the words above them they fit on the smallest screen. */
const ON_A_PAGE = 4;

/** Letters that pick a way of the page: never figures, for those answer a look. */
export const WAY_LETTERS: readonly string[] = ['a', 'b', 'c', 'd'];

/** Places of the likeliest kinds, one after the other, that stand on the first page. */
const FIRST_PLACES = [2, 1, 1];

/** The ways to mend a mismatch on a page: first two places of the likeliest kind and one of the next two, then all the others. */
export function waysOn(check: RodCheck, page: number): readonly MismatchWay[] {
  return allWays(check).slice(page * ON_A_PAGE, (page + 1) * ON_A_PAGE);
}

/** A way by its mismatch and its place among the ways of that. */
export function wayOf({
  named,
  index,
}: {
  readonly named: NamedMismatch;
  readonly index: number;
}): MismatchWay | undefined {
  const way = named.ways[index];
  return way === undefined ? undefined : { ...way, named, index };
}

/** Pages that the ways fill. */
export function pagesOf(check: RodCheck): number {
  return Math.ceil(allWays(check).length / ON_A_PAGE);
}

function allWays(check: RodCheck): readonly MismatchWay[] {
  const ways = check.named.map((named) => named.ways.map((way, index) => ({ ...way, named, index })));
  return [
    ...ways.flatMap((places, kind) => places.slice(0, FIRST_PLACES[kind] ?? 0)),
    ...ways.flatMap((places, kind) => places.slice(FIRST_PLACES[kind] ?? 0)),
  ];
}
