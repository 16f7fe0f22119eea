import { wayWords } from '../../sampling/rod/effect.ts';
import { mostLikely } from '../../sampling/rod/likely.ts';
import { NEAR_SPLITTER } from '../../sampling/rod/mismatch.ts';
import { LOOKS, type NamedMismatch, type RodCheck } from '../../sampling/rod/rod-check.ts';
import { inOwn, type State } from '../state.ts';
import { type Line, wrap } from '../widgets/line.ts';

/** A look that tells mismatches apart. */
export type Look = NonNullable<RodCheck['look']>;

/** How the answer to a look is typed; never a single figure, which mends. */
export const LOOK_ANSWERS: { readonly [look in Look]: string } = {
  lastTwo: 'type both, like 162 163',
  count: 'type x and the number, like x6',
  first: 'type its last digits, two or more',
  double: 'type y or n',
  walk: 'type x6 c1 n',
  controls: 'type c and the number, like c1',
};

/** One way to fix a mismatch, as the prompt letters it: the mismatch, the place, and which of its ways it is. */
export type MismatchWay = NamedMismatch['ways'][number] & {
  readonly named: NamedMismatch;
  readonly index: number;
};

/** The question on the smallest screen: columns within its box, and lines above its foot. What has a letter there can be read there. */
const SMALLEST = { columns: 76, lines: 12 } as const;

/** Letters that pick a way of the page: never figures, for those answer a look. */
export const WAY_LETTERS: readonly string[] = ['a', 'b', 'c', 'd'];

/** Kinds that are listed first, the likeliest. */
const FIRST_KINDS = 3;

/**
 * The ways to fix a mismatch, page by page, as many on each as can be read on the smallest screen: first one of each of the likeliest kinds (two
 * of the very likeliest, unless its place is asked for), then all the others.
 */
export function pagesOf(state: State, check: RodCheck): readonly (readonly MismatchWay[])[] {
  const pages: MismatchWay[][] = [[]];
  let room = roomOn(state, check, 0);
  for (const way of allWays(check)) {
    const page = pages.at(-1) ?? [];
    const height = wayLines(way, page.length, SMALLEST.columns).length;
    if (page.length > 0 && (page.length === WAY_LETTERS.length || height > room)) {
      room = roomOn(state, check, pages.length);
      pages.push([way]);
    } else page.push(way);
    room -= height;
  }
  return pages;
}

/** The ways to fix a mismatch that have a letter on a page. */
export function waysOn(state: State, check: RodCheck, page: number): readonly MismatchWay[] {
  return pagesOf(state, check)[page] ?? [];
}

function roomOn(state: State, check: RodCheck, page: number): number {
  return SMALLEST.lines - headLines(state, check, page, SMALLEST.columns).length;
}

/** A way with its letter. */
export function wayLines(way: MismatchWay, index: number, width: number): readonly Line[] {
  return wrap(`${WAY_LETTERS[index]} = ${way.named.name}: ${wayWords(way)}`, width, 'strong');
}

/** What stands over the ways: on the first page what it most likely is and what to do about it; on all of them the caution, and the look asked for. */
export function headLines(state: State, check: RodCheck, page: number, width: number): readonly Line[] {
  const likeliest = check.named[0];
  const look =
    check.look === undefined
      ? placeAsked(state, check, width)
      : wrap(`To be sure: ${LOOKS[check.look]} (${inOwn(state, LOOK_ANSWERS[check.look])})`, width, 'accent');
  return page > 0
    ? [...wrap(NEAR_SPLITTER, width, 'warn'), ...look]
    : [...likeliestLines(state, likeliest, width), ...look];
}

function likeliestLines(state: State, likeliest: NamedMismatch | undefined, width: number): readonly Line[] {
  if (likeliest === undefined)
    return [
      ...wrap(
        'No usual mismatch gives these numbers. Read the calico again; ask the field assistant.',
        width,
        'alert',
      ),
      ...wrap(NEAR_SPLITTER, width, 'warn'),
    ];
  return [
    ...wrap(mostLikely(likeliest), width, 'alert'),
    ...wrap(inOwn(state, likeliest.ground), width),
    // Calicos can hang on the splitter or lie under it: the driller's word stands wherever someone is sent to look for one.
    ...(likeliest.ground.includes(NEAR_SPLITTER) ? [] : wrap(NEAR_SPLITTER, width, 'warn')),
  ];
}

/** The one fact that settles where it happened, asked once no look is left and more places stand than are taken in at a glance. */
function placeAsked(state: State, { look, named: [likeliest] }: RodCheck, width: number): readonly Line[] {
  if (look !== undefined || likeliest?.asks === undefined || likeliest.ways.length < 3) return [];
  const answer =
    typeof likeliest.ways[0]?.place === 'string'
      ? 'its last digits'
      : `its depths, like ${inOwn(state, '46-47')}`;
  return wrap(`${likeliest.asks} Type ${answer}: it is fixed there.`, width, 'accent');
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

function allWays(check: RodCheck): readonly MismatchWay[] {
  const ways = check.named.map((named) => named.ways.map((way, index) => ({ ...way, named, index })));
  const asksPlace = check.named[0]?.asks !== undefined;
  const first = (kind: number): number => (kind >= FIRST_KINDS ? 0 : kind === 0 && !asksPlace ? 2 : 1);
  return [
    ...ways.flatMap((places, kind) => places.slice(0, first(kind))),
    ...ways.flatMap((places, kind) => places.slice(first(kind))),
  ];
}
