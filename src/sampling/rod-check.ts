import type { Bag } from '../hole/bags.ts';
import { endsWithDigits } from './bag-number.ts';
import { issue } from './issue.ts';
import {
  type MismatchKind,
  NEAR_SPLITTER,
  type OtherHole,
  type RodSeen,
  type Situation,
  type Supposition,
  samplesOf,
  type Trace,
} from './mismatch.ts';
import { MISMATCHES } from './mismatches/registry.ts';
import { numberLine } from './number-line.ts';
import type { Sampling } from './sampling.ts';
import type { StreamState } from './stream.ts';

/** One more look that tells two mismatches apart. */
export const LOOKS = {
  first: 'Read the last digits on the first calico of this rod.',
  double: 'Is one calico about twice as heavy as the others?',
  sachets: 'How many sachet bags (standards and blanks) lie in this rod?',
} as const;
export type Look = keyof typeof LOOKS;

/** A mismatch named: what happened, what to do on the ground, and its mending wherever it may have happened, likeliest first. */
export interface NamedMismatch {
  readonly code: string;
  readonly name: string;
  readonly happened: string;
  /** What to do about the bags; where it takes hands near the machine, under the driller's word only. */
  readonly ground: string;
  readonly ways: readonly Pick<Supposition, 'at' | 'fix'>[];
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
  readonly agrees: boolean;
  /** Mismatches that fit, likeliest first; none where it agrees. */
  readonly named: readonly NamedMismatch[];
  /** The look that tells the first two apart, where there is one. */
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
  const fits = withAndWithoutTail(expected).find((bags) => fitsTrace(seen, lastAndCount(bags)));
  if (fits !== undefined) return { expected: fits, agrees: true, named: [] };
  const situation: Situation = {
    sampling,
    state,
    seen,
    others,
    expected,
    line: numberLine(sampling.numbers, state.bagRuns),
    samples: samplesOf(sampling, state),
  };
  const fitting = MISMATCHES.map((kind) => ({
    kind,
    ways: kind
      .suppose(situation)
      .flatMap(tailed)
      .filter((each) => fitsTrace(seen, each.trace)),
  }))
    .filter(({ ways }) => ways.length > 0)
    .sort((a, b) => weightOf(b.ways) - weightOf(a.ways));
  const look = lookBetween(fitting[0]?.ways ?? [], fitting[1]?.ways ?? [], seen);
  return {
    expected,
    agrees: false,
    named: namedOf(fitting),
    ...(look === undefined ? {} : { look }),
  };
}

/** The bags of a rod, and the same without the sachets that close it: they are put in at once or when the next rod begins. */
function withAndWithoutTail(bags: readonly Bag[]): readonly (readonly Bag[])[] {
  const end = bags.findLastIndex((bag) => bag.kind !== 'standard' && bag.kind !== 'blank') + 1;
  return end === bags.length || end === 0 ? [bags] : [bags, bags.slice(0, end)];
}

/** A supposition, and the same with its closing sachets not put in yet. */
function tailed(way: Supposition): readonly Supposition[] {
  const { issue: whole } = way.fix;
  const [, short] = withAndWithoutTail(whole);
  if (short === undefined || way.trace.last !== whole.at(-1)?.number) return [way];
  const sachets = whole.length - short.length;
  const { count, sachets: lying, ...rest } = way.trace;
  const trace = {
    ...rest,
    ...lastAndCount(short),
    ...(count === undefined ? {} : { count: count - sachets }),
    ...(lying === undefined ? {} : { sachets: lying - sachets }),
  };
  return [way, { ...way, trace, fix: { ...way.fix, issue: short } }];
}

function namedOf(
  fitting: readonly { readonly kind: MismatchKind; readonly ways: readonly Supposition[] }[],
): readonly NamedMismatch[] {
  const all = fitting.reduce((sum, { ways }) => sum + weightOf(ways), 0);
  return fitting.map(({ kind, ways }) => ({
    code: kind.code,
    name: kind.name,
    happened: kind.happened,
    ground: kind.nearSplitter ? `${kind.ground} ${NEAR_SPLITTER}` : kind.ground,
    ways: [...ways].sort((a, b) => b.weight - a.weight).map(({ at, fix }) => ({ at, fix })),
    share: weightOf(ways) / all,
  }));
}

function weightOf(ways: readonly Supposition[]): number {
  return ways.reduce((sum, each) => sum + each.weight, 0);
}

function lastAndCount(bags: readonly Bag[]): Trace {
  const last = bags.at(-1)?.number;
  return { count: bags.length, ...(last === undefined ? {} : { last }) };
}

/** True where nothing that was read speaks against a trace. A part that the trace leaves open fits everything. */
function fitsTrace(seen: RodSeen, trace: Trace): boolean {
  return (
    (seen.digits === undefined || trace.last === undefined || endsWithDigits(trace.last, seen.digits)) &&
    (seen.count === undefined || trace.count === undefined || trace.count === seen.count) &&
    (seen.first === undefined || trace.first === undefined || endsWithDigits(trace.first, seen.first)) &&
    (seen.double === undefined || trace.double === undefined || trace.double === seen.double) &&
    (seen.sachets === undefined || trace.sachets === undefined || trace.sachets === seen.sachets)
  );
}

/** The first look not taken yet whose answer would differ between two mismatches. */
function lookBetween(a: readonly Supposition[], b: readonly Supposition[], seen: RodSeen): Look | undefined {
  const answers = (ways: readonly Supposition[], look: Look) =>
    [...new Set(ways.map(({ trace }) => trace[look]))].sort();
  if (a.length === 0 || b.length === 0) return undefined;
  return (Object.keys(LOOKS) as Look[]).find(
    (look) => seen[look] === undefined && String(answers(a, look)) !== String(answers(b, look)),
  );
}
