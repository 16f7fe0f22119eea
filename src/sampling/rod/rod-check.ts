import type { Bag } from '../../hole/bags.ts';
import type { Interval } from '../../quantity/interval.ts';
import { endsWithDigits } from '../numbers/bag-number.ts';
import { numberLine } from '../numbers/number-line.ts';
import type { Sampling } from '../sampling.ts';
import { issue, unbagged } from '../stream/issue.ts';
import { lastPlace, type StreamState } from '../stream/stream.ts';
import { effectWords, wayWords } from './effect.ts';
import { besideStream, type Row, rowAsExpected, rowsOf, traceOf } from './lying.ts';
import {
  type Claim,
  type MismatchKind,
  NEAR_SPLITTER,
  type OtherHole,
  type RodSeen,
  type Situation,
  type Supposition,
  samplesOf,
  type Trace,
  withAndWithoutTail,
} from './mismatch.ts';
import { MISMATCHES } from './mismatches/registry.ts';

/** One more look that tells mismatches apart: what is asked. One walk down the row takes three facts home, so it is one look. */
export const LOOKS = {
  lastTwo: 'Read the last two calicos once more, the very last one second.',
  count: 'How many calicos are there in this rod, controls and duplicates too?',
  controls: 'How many standards, blanks and duplicates are there in this rod?',
  first: 'Read the last digits on the first calico of this rod.',
  double: 'Is one calico about twice as heavy as the others?',
  walk: 'Walk the row once: how many calicos, how many controls, is one twice as heavy?',
} as const;
type Look = keyof typeof LOOKS;

/** What a look costs, as the share of names put right that it has to bring. */
const COST: { readonly [look in Look]: number } = {
  lastTwo: 0.01,
  count: 0.012,
  controls: 0.02,
  first: 0.025,
  double: 0.03,
  walk: 0.04,
};

/** What a look tells. */
const TELLS: { readonly [look in Look]: readonly (keyof Trace & keyof RodSeen)[] } = {
  lastTwo: ['lastTwo'],
  count: ['count'],
  controls: ['controls'],
  first: ['first'],
  double: ['double'],
  walk: ['count', 'controls', 'double'],
};

/** One way to fix a mismatch, with what it makes of the numbers beside the bags expected, in words; empty where no number changes. */
export interface Way extends Pick<Supposition, 'at' | 'fix' | 'place' | 'deed'> {
  readonly effect: string;
}

/** A mismatch named: what happened, what to do on the ground, and its mending wherever it may have happened, likeliest first. */
export interface NamedMismatch {
  readonly code: string;
  readonly name: string;
  readonly happened: string;
  readonly claims: readonly Claim[];
  /** What to do about the bags; where it takes hands near the machine, under the driller's word only. */
  readonly ground: string;
  /** No two ways of a check do the same, and none reads like another ({@link wayWords}). */
  readonly ways: readonly Way[];
  /** The one fact that settles where it happened, where a person can see it. */
  readonly asks?: string;
  /** How well it fits beside the others named: a share from 0 to 1. */
  readonly share: number;
}

/** What a rod check says. It never blocks anything. */
export interface RodCheck {
  /**
   * The bags that the rod should have given: shown first, issued on Enter. Where the last number read shows that a standard or
   * blank behind the last metre is not put in yet, it is left to the next rod.
   */
  readonly expected: readonly Bag[];
  /** The row as it lies when all is as expected: with the bags placed by hand, and numbers kept without a sample. It is what is shown, and counted. */
  readonly row: readonly Bag[];
  /** The number read last is kept for a metre that gave nothing: its calico is empty, or it hangs where it should not. */
  readonly keptRead?: Bag;
  /** Drilled metres that no numbered bag is left for. */
  readonly unbagged?: Interval;
  readonly agrees: boolean;
  /** Mismatches that fit, likeliest first; none where it agrees. */
  readonly named: readonly NamedMismatch[];
  /** The look that tells most, where more than one mismatch fits and a look can part them. */
  readonly look?: Look;
}

/**
 * Holds what was read off the bags at a rod done against the bags that it should have given. `state.drilledMm` is the new drilled
 * head; the bags of this rod are not issued yet. Nothing read agrees with everything: one key confirms.
 */
export function rodCheck(
  sampling: Sampling,
  state: StreamState,
  seen: RodSeen = {},
  others: readonly OtherHole[] = [],
): RodCheck {
  const expected = issue(sampling, state);
  const without = unbagged(sampling, state);
  const missing = without === undefined ? {} : { unbagged: without };
  const beside = besideStream(state);
  const line = numberLine(sampling.numbers, state.bagRuns);
  // A rod that completes no sample leaves the last calico as it was.
  const standing = line.at(lastPlace(sampling, state, line));
  const before = standing === undefined ? {} : { last: standing };
  const asExpected = readable({ sampling, state, beside }, { at: '', fix: { issue: expected }, weight: 1 });
  const fits = asExpected.find(({ trace, row }) => fitsRow(seen, { ...before, ...trace }, row));
  const rowOf = (bags: readonly Bag[]): readonly Bag[] => rowAsExpected(bags, beside, state);
  if (fits !== undefined) {
    const row = rowOf(fits.fix.issue);
    return { expected: fits.fix.issue, row, ...missing, ...keptReadOf(seen, row), agrees: true, named: [] };
  }
  const situation: Situation = {
    ...{ sampling, state, seen, others, expected, line, beside },
    endings: withAndWithoutTail(expected),
    samples: samplesOf(sampling, state),
  };
  const fitting = fittingKinds(situation);
  const look = lookThatSplits(fitting, seen);
  return {
    expected,
    row: rowOf(expected),
    ...missing,
    agrees: false,
    named: namedOf(situation, fitting),
    ...(look === undefined ? {} : { look }),
  };
}

/** The kept number at the end of a row where that is what was read, and not the last one with a sample. */
function keptReadOf({ digits }: RodSeen, row: readonly Bag[]): { readonly keptRead?: Bag } {
  const last = row.at(-1);
  const filled = row.findLast(({ kind }) => kind !== 'no sample');
  if (digits === undefined || last?.kind !== 'no sample' || !endsWithDigits(last.number, digits)) return {};
  return filled !== undefined && endsWithDigits(filled.number, digits) ? {} : { keptRead: last };
}

/** A supposition as it may be read: one for every row that its bags may make. */
interface Readable {
  readonly way: Supposition;
  readonly trace: Trace;
  readonly row: Row;
  readonly fix: Supposition['fix'];
}

/** A kind with those of its suppositions that nothing read speaks against. */
interface Fitting {
  readonly kind: MismatchKind;
  readonly ways: readonly Readable[];
}

/** Everything that may be read where a supposition holds. */
function readable(
  { sampling, state, beside }: Pick<Situation, 'sampling' | 'state' | 'beside'>,
  way: Supposition,
): readonly Readable[] {
  if (way.lying === 'anyhow') {
    const trace = way.read === undefined ? {} : { last: way.read.last };
    return [{ way, trace, row: { bags: [], loose: 0 }, fix: way.fix }];
  }
  return rowsOf(state, way, beside).map(({ row, fix }) => ({
    way,
    row,
    fix,
    trace: traceOf(sampling, row, way.read),
  }));
}

/** Kinds that fit what was read, likeliest first. */
function fittingKinds(situation: Situation): readonly Fitting[] {
  return MISMATCHES.map((kind) => {
    const supposed = kind.suppose(situation).flatMap((way) => readable(situation, way));
    return { kind, ways: supposed.filter(({ trace, row }) => fitsRow(situation.seen, trace, row)) };
  })
    .filter(({ ways }) => ways.length > 0)
    .sort((a, b) => weightOf(b.ways) - weightOf(a.ways));
}

function namedOf(situation: Situation, fitting: readonly Fitting[]): readonly NamedMismatch[] {
  const all = fitting.reduce((sum, { ways }) => sum + weightOf(ways), 0);
  const offered = new Set<string>();
  const isNew = (way: Way): boolean => offered.size < offered.add(wayWords(way)).size;
  const named = fitting.map(({ kind, ways }) => ({
    code: kind.code,
    name: kind.name,
    happened: kind.happened,
    claims: kind.claims,
    ground: kind.nearSplitter ? `${NEAR_SPLITTER} ${kind.ground}` : kind.ground,
    ...(kind.asks === undefined ? {} : { asks: kind.asks }),
    ways: distinct(ways)
      .sort((a, b) => b.way.weight - a.way.weight)
      .map((each) => wayOf(situation, each))
      .filter(isNew),
    share: weightOf(ways) / all,
  }));
  return named.filter(({ ways }) => ways.length > 0);
}

function wayOf({ sampling, state, expected, line }: Situation, { way, fix }: Readable): Way {
  const { at, place, deed } = way;
  return {
    ...{ at, fix, effect: effectWords(sampling, { bags: state.bags, expected, line }, fix) },
    ...(place === undefined ? {} : { place }),
    ...(deed === undefined ? {} : { deed }),
  };
}

/** Rows that read alike and are mended alike are one way. */
function distinct(ways: readonly Readable[]): Readable[] {
  const kept = new Map<string, Readable>();
  for (const each of ways) {
    const key = JSON.stringify([
      each.way.at,
      each.fix.issue.map((bag) => [bag.number, bag.fromMm, bag.kind]),
    ]);
    if (!kept.has(key)) kept.set(key, each);
  }
  return [...kept.values()];
}

function weightOf(ways: readonly Readable[]): number {
  return distinct(ways).reduce((sum, { way }) => sum + way.weight, 0);
}

/** True where nothing that was read speaks against a row. A part that the trace leaves open fits everything. */
function fitsRow(seen: RodSeen, trace: Trace, { loose }: Row): boolean {
  const ends = (number: string | undefined, digits: string | undefined) =>
    digits === undefined || number === undefined || endsWithDigits(number, digits);
  const counts = (most: number | undefined, counted: number | undefined) =>
    counted === undefined || most === undefined || (most <= counted && counted <= most + loose);
  return (
    ends(trace.last, seen.digits) &&
    ends(loose > 0 ? undefined : trace.first, seen.first) &&
    ends(trace.lastTwo?.[0], seen.lastTwo?.[0]) &&
    ends(trace.lastTwo?.[1], seen.lastTwo?.[1]) &&
    counts(trace.count, seen.count) &&
    counts(trace.controls, seen.controls) &&
    (seen.double === undefined || trace.double === undefined || trace.double === seen.double)
  );
}

/**
 * The look not taken yet that brings most for what it costs: how many more of the mismatches would be named rightly after it, and, for what
 * two looks part and one does not, how far it narrows them down. None where no look is worth its cost.
 */
function lookThatSplits(fitting: readonly Fitting[], seen: RodSeen): Look | undefined {
  const all = fitting.reduce((sum, { ways }) => sum + weightOf(ways), 0);
  const now = worthOf([fitting.map(({ ways }) => weightOf(ways) / all)]);
  const gain = (look: Look): number => {
    const byAnswer = new Map<string, Map<string, number>>();
    for (const { kind, ways } of fitting)
      for (const { way, trace } of distinct(ways)) {
        const answer = JSON.stringify(TELLS[look].map((fact) => trace[fact] ?? 'open'));
        const kinds = byAnswer.get(answer) ?? new Map<string, number>();
        byAnswer.set(answer, kinds.set(kind.code, (kinds.get(kind.code) ?? 0) + way.weight / all));
      }
    return worthOf([...byAnswer.values()].map((kinds) => [...kinds.values()])) - now - COST[look];
  };
  return (Object.keys(LOOKS) as Look[])
    .filter((look) => TELLS[look].some((fact) => seen[fact] === undefined))
    .map((look) => ({ look, gain: gain(look) }))
    .filter((each) => each.gain > 0)
    .sort((a, b) => b.gain - a.gain)[0]?.look;
}

/** How well kinds are told apart, each answer with the shares of the kinds that give it: those named rightly, and a little for those narrowed down. */
function worthOf(answers: readonly (readonly number[])[]): number {
  return answers.reduce((worth, shares) => {
    const all = shares.reduce((sum, share) => sum + share, 0);
    const squares = shares.reduce((sum, share) => sum + share ** 2, 0);
    return worth + Math.max(...shares, 0) + (all === 0 ? 0 : NARROWED * (squares / all));
  }, 0);
}

/** What narrowing down counts beside naming rightly. */
const NARROWED = 0.2;
