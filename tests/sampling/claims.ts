import type { Claim } from '../../src/sampling/rod/mismatch.ts';
import type { RodCheck } from '../../src/sampling/rod/rod-check.ts';

/** A calico as it lies: the number on it and what is really in it. */
export interface Lying {
  readonly number: string;
  readonly holds: 'metres' | 'sachet' | 'second split';
  readonly metres: readonly number[];
}

/** What is true of a rod in a simulated world: the row as it lies and as it should, and the number that was read. */
export interface Ground {
  readonly row: readonly Lying[];
  readonly should: readonly Lying[];
  /** Metres really drilled in the rod, and those that the mark says. */
  readonly drilled: readonly number[];
  readonly marked: readonly number[];
  readonly read: string;
  /** The number that the last calico was given, before anybody wrote it wrongly. */
  readonly lastGiven: string;
  readonly whose: 'this hole' | 'another hole' | 'a block' | 'no one' | 'out of use';
  /** Where the row began, by what happened in rods above that no one read. */
  readonly began: 'level' | 'ahead' | 'behind';
  readonly isKept: (number: string) => boolean;
}

const serialOf = (number: string): number => Number(number.slice(2));
const ends = (rows: readonly Lying[]): readonly string[] => rows.map(({ number }) => number);
const same = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((each, index) => each === b[index]);
/** The row without the sachets that close it: they may be put in when the next rod begins. */
const withoutTail = (row: readonly Lying[]): readonly Lying[] =>
  row.slice(0, row.findLastIndex(({ holds }) => holds !== 'sachet') + 1);
const isAsItShould = (row: readonly string[], { should }: Ground): boolean =>
  [should, withoutTail(should)].some((each) => same(row, ends(each)));

/** Numbers for rock that were passed over, or all of them: of those from the first due to the last in the row, the ones that aren't there. */
function passedOver({ row, should, isKept }: Ground, withKept = false): number {
  const there = new Set(ends(row));
  const first = serialOf(should[0]?.number ?? '');
  const last = Math.max(...[...there].map(serialOf).filter((serial) => Math.abs(serial - first) < 400));
  let count = 0;
  for (let serial = first; serial < last; serial++) {
    const number = `ZQ${String(serial).padStart(6, '0')}`;
    if (!there.has(number) && (withKept || !isKept(number))) count += 1;
  }
  return count;
}

const inRock = ({ row }: Ground, metre: number): number =>
  row.filter(({ holds, metres }) => holds === 'metres' && metres.includes(metre)).length;

export function isTransposed(a: string, b: string): boolean {
  const off = [...a].flatMap((digit, index) => (digit === b[index] ? [] : [index]));
  return a.length === b.length && off.length === 2 && a[off[0]!] === b[off[1]!] && a[off[1]!] === b[off[0]!];
}

/** Whether a claim is true of what lies there. */
const TRUE: { readonly [claim in Claim]: (ground: Ground) => boolean } = {
  'the number is of no hole and no block': ({ whose }) => whose === 'no one',
  'the number is of a block, and labelled for no hole': ({ whose }) => whose === 'a block',
  'the number is of another hole': ({ whose }) => whose === 'another hole',
  'the number was put out of use': ({ whose }) => whose === 'out of use',
  'two digits of the last number are the wrong way round': ({ read, lastGiven }) =>
    isTransposed(read, lastGiven),
  'the last but one was read, and the row is right': (ground) =>
    ground.read === ground.row.at(-2)?.number && isAsItShould(ends(ground.row), ground),
  'the last two lie in each other’s place': (ground) => {
    const row = ends(ground.row);
    return isAsItShould([...row.slice(0, -2), ...row.slice(-2).reverse()], ground);
  },
  'a metre has no bag': (ground) => ground.drilled.some((metre) => inRock(ground, metre) === 0),
  'a metre is in two bags': (ground) => ground.drilled.some((metre) => inRock(ground, metre) > 1),
  'a bag holds two metres': ({ row }) =>
    row.some(({ holds, metres }) => holds === 'metres' && metres.length > 1),
  'a number was passed over': (ground) => passedOver(ground) > 0,
  'no number was passed over': (ground) => passedOver(ground) === 0,
  'a number is on two bags': ({ row }) => new Set(ends(row)).size < row.length,
  'a control due is not there': ({ row, should }) =>
    withoutTail(should).some(
      ({ number, holds }) =>
        holds !== 'metres' && !row.some((each) => each.number === number && each.holds === holds),
    ),
  'a control lies under a metre’s number': ({ row, isKept }) =>
    row.some(({ number, holds }) => holds === 'sachet' && !isKept(number)),
  'a duplicate was not caught': ({ row, should }) =>
    should.some(
      ({ number, holds }) =>
        holds === 'second split' && !row.some((each) => each.number === number && each.holds === holds),
    ),
  'duplicate and primary hang on each other’s chute': ({ row, should }) =>
    should.some(
      ({ number, holds }) =>
        holds === 'second split' && row.some((each) => each.number === number && each.holds === 'metres'),
    ),
  'the row began a number ahead': ({ began }) => began === 'ahead',
  'the row began a number behind': ({ began }) => began === 'behind',
  'the row went on from another number': (ground) =>
    ground.whose === 'this hole' &&
    (passedOver(ground, true) > 2 || serialOf(ground.read) < serialOf(ground.should[0]?.number ?? '')),
  'the last of the rod above was read': (ground) =>
    serialOf(ground.read) < serialOf(ground.should[0]?.number ?? '') &&
    isAsItShould(ends(ground.row), ground),
  'the row is right and its count is not': (ground) => isAsItShould(ends(ground.row), ground),
  'the depth is not the one marked': ({ drilled, marked }) => drilled.length !== marked.length,
  'no single slip': () => false,
};

/** Claims about the number in hand: facts of the project's numbers, never a matter of odds. */
export const FACTS: ReadonlySet<Claim> = new Set<Claim>([
  'the number is of no hole and no block',
  'the number is of a block, and labelled for no hole',
  'the number is of another hole',
  'the number was put out of use',
]);

/** A sentence that a check said: what it claims, with which odds, and whether all of that is true. */
export interface Judged {
  readonly code: string;
  readonly tenths: number;
  readonly isFact: boolean;
  readonly isTrue: boolean;
}

/**
 * The sentence that is at the head of a check, compared with the ground of the rods since something slipped: it may show a rod later. None where
 * the bags fit.
 */
export function judgedSentence(
  { named: [likeliest] }: RodCheck,
  grounds: readonly Ground[],
): readonly Judged[] {
  if (likeliest === undefined) return [];
  const { code, claims, share } = likeliest;
  return [
    {
      code,
      tenths: Math.min(9, Math.floor(share * 10)),
      isFact: claims.some((claim) => FACTS.has(claim)),
      isTrue: grounds.some((ground) => claims.every((claim) => TRUE[claim](ground))),
    },
  ];
}
