import type { Bag } from '../../hole/bags.ts';
import { endsWithDigits } from '../numbers/bag-number.ts';
import { numberLine } from '../numbers/number-line.ts';
import type { Sampling } from '../sampling.ts';
import { issue } from '../stream/issue.ts';
import { lastPlace, type StreamState } from '../stream/stream.ts';
import {
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

/** One more look that tells two mismatches apart. */
export const LOOKS = {
  first: 'Read the last digits on the first calico of this rod.',
  double: 'Is one calico about twice as heavy as the others?',
  controls: 'How many standards, blanks and duplicates lie in this rod?',
} as const;
type Look = keyof typeof LOOKS;

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
  const endings = withAndWithoutTail(expected);
  const line = numberLine(sampling.numbers, state.bagRuns);
  // A rod that completes no sample leaves the last calico as it was.
  const standing = line.at(lastPlace(sampling, state, line));
  const before = standing === undefined ? {} : { last: standing };
  const fits = endings.find((bags) => fitsTrace(seen, { ...before, ...lastAndCount(bags) }));
  if (fits !== undefined) return { expected: fits, agrees: true, named: [] };
  const situation: Situation = {
    sampling,
    state,
    seen,
    others,
    expected,
    endings,
    line,
    samples: samplesOf(sampling, state),
  };
  const fitting = fittingKinds(situation);
  const ways = fitting.flatMap((each) => each.ways);
  const look = lookThatSplits(ways, seen);
  return { expected, agrees: false, named: namedOf(fitting), ...(look === undefined ? {} : { look }) };
}

/** A kind with those of its suppositions that nothing read speaks against. */
interface Fitting {
  readonly kind: MismatchKind;
  readonly ways: readonly Supposition[];
}

/** Kinds that fit what was read, likeliest first. */
function fittingKinds(situation: Situation): readonly Fitting[] {
  return MISMATCHES.map((kind) => {
    const supposed = kind.suppose(situation).flatMap(tailed);
    return { kind, ways: supposed.filter((each) => fitsTrace(situation.seen, each.trace)) };
  })
    .filter(({ ways }) => ways.length > 0)
    .sort((a, b) => weightOf(b.ways) - weightOf(a.ways));
}

/** A supposition, and the same with its closing sachets not put in yet. */
function tailed(way: Supposition): readonly Supposition[] {
  const { issue: whole } = way.fix;
  const [, short] = withAndWithoutTail(whole);
  if (short === undefined || way.trace.last !== whole.at(-1)?.number) return [way];
  const sachets = whole.length - short.length;
  const { count, controls, ...rest } = way.trace;
  const trace = {
    ...rest,
    ...lastAndCount(short),
    ...(count === undefined ? {} : { count: count - sachets }),
    ...(controls === undefined ? {} : { controls: controls - sachets }),
  };
  return [way, { ...way, trace, fix: { ...way.fix, issue: short } }];
}

function namedOf(fitting: readonly Fitting[]): readonly NamedMismatch[] {
  const all = fitting.reduce((sum, { ways }) => sum + weightOf(ways), 0);
  return fitting.map(({ kind, ways }) => ({
    code: kind.code,
    name: kind.name,
    happened: kind.happened,
    ground: kind.nearSplitter ? `${NEAR_SPLITTER} ${kind.ground}` : kind.ground,
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
    (seen.controls === undefined || trace.controls === undefined || trace.controls === seen.controls)
  );
}

/** The look not taken yet that parts the suppositions best: its likeliest answers leave the least beside them. None where no look parts them. */
function lookThatSplits(ways: readonly Supposition[], seen: RodSeen): Look | undefined {
  const left = (look: Look): number => {
    const byAnswer = new Map<string, number>();
    for (const { trace, weight } of ways) {
      const answer = String(trace[look]);
      byAnswer.set(answer, (byAnswer.get(answer) ?? 0) + weight);
    }
    return [...byAnswer.values()].reduce((sum, weight) => sum + weight ** 2, 0);
  };
  const whole = weightOf(ways) ** 2;
  return (Object.keys(LOOKS) as Look[])
    .filter((look) => seen[look] === undefined && left(look) < WORTH_A_LOOK * whole)
    .sort((a, b) => left(a) - left(b))[0];
}

/** A look is asked for where it can be expected to rule out more than a hundredth. */
const WORTH_A_LOOK = 0.98;
