import type { Interval } from '../../quantity/interval.ts';
import type { Tri } from '../../quantity/tri.ts';
import { allOf, always, anyOf, type History, notOf, stateAt } from './history.ts';
import { deepestMm, type Situation } from './situation.ts';
import { type Ahead, aheadOf, aheadOfAll, aheadOfAny, aheadOfNot, from } from './span.ts';

/** How much there is of what a condition asks for, in millimetres of hole. */
type Amount = {
  /** What the record supports. */
  readonly haveMm: number;
  readonly needMm: number;
};

/** What came of one condition. */
export type Outcome = {
  readonly state: Tri;
  /** The state by the depth the hole had, to the deeper of the two heads. */
  readonly history: History;
  readonly amount?: Amount;
  /** The amount with its cut-off, for the panel: `pyrite < 1 % for 3 of 10 m in a row`. A statement of fact, true whatever the state. */
  readonly progress: string;
  /** The progress and what decided it. */
  readonly reason: string;
  /** The metres that decided it, the shallowest first. */
  readonly deciding: readonly Interval[];
  readonly ahead: Ahead;
  /**
   * Whether it can be seen coming: a depth that the rig draws near, a run that has begun. False for what may turn at any metre and
   * is no use to announce: a shot, a hold, a first metre of something.
   */
  readonly foreseen: boolean;
  /** Where it is seen coming, if not where it can come to hold at the earliest: a part that may turn at any metre doesn't count. */
  readonly foreseenMm?: number;
  /** Where it can't be told: the metres that have to be logged first. */
  readonly unlogged?: readonly Interval[];
  /** Where it can't be told: what else is to be done first, in words: `take readings at 30–36`. */
  readonly needs?: readonly string[];
  /** Where it can't be told and nothing can be done at once: what ends the doubt. */
  readonly until?: string;
  /** Metres not logged that hold it not met by the driller's word alone. */
  readonly byWord?: readonly Interval[];
  /** What has to go on for it to come to hold, where that is not drilling alone: `pyrite < 1 %`. */
  readonly proviso?: string;
};

/** An outcome that can't be told because something was not given: what, in words. */
export function notGiven(situation: Situation, words: string): Outcome {
  const ahead = from(deepestMm(situation));
  return {
    state: 'cannot tell',
    history: always('cannot tell'),
    progress: words,
    reason: words,
    deciding: [],
    ahead: aheadOf(ahead, ahead),
    foreseen: false,
  };
}

/** An outcome from a history, its state being that at the deeper of the two heads. */
export function outcomeOf(
  situation: Situation,
  history: History,
  said: Omit<Outcome, 'state' | 'history'>,
): Outcome {
  return { ...said, state: stateAt(history, deepestMm(situation)), history };
}

/** Every one of several outcomes. Those that decide it speak: all when it holds, else those that are in its way. */
export function everyOne(situation: Situation, parts: readonly Outcome[]): Outcome {
  const history = allOf(parts.map((part) => part.history));
  const state = stateAt(history, deepestMm(situation));
  const speak = parts.filter((part) => part.state === state);
  const ahead = aheadOfAll(parts.map((part) => part.ahead));
  const foreseen = wanting(parts).every((part) => part.foreseen);
  const foreseenMm = Math.max(0, ...wanting(parts).flatMap((part) => foreseenAt(part) ?? []));
  return { ...spoken(speak, ' and '), state, history, ahead, foreseen, foreseenMm };
}

/** At least one of several outcomes. Those that decide it speak: all when none holds. */
export function anyOne(situation: Situation, parts: readonly Outcome[]): Outcome {
  const history = anyOf(parts.map((part) => part.history));
  const state = stateAt(history, deepestMm(situation));
  const speak = parts.filter((part) => part.state === state);
  const ahead = aheadOfAny(parts.map((part) => part.ahead));
  const depths = wanting(parts).flatMap((part) => foreseenAt(part) ?? []);
  const said = { ...spoken(speak, ' or '), state, history, ahead };
  return depths.length === 0
    ? { ...said, foreseen: false }
    : { ...said, foreseen: true, foreseenMm: Math.min(...depths) };
}

/** The opposite of an outcome. It has no amount of its own: what is there speaks against it. */
export function opposite(part: Outcome): Outcome {
  const { amount: _against, proviso: _unwanted, foreseenMm: _held, ...said } = part;
  const history = notOf(part.history);
  const state = part.state === 'yes' ? 'no' : part.state === 'no' ? 'yes' : 'cannot tell';
  return { ...said, state, history, ahead: aheadOfNot(part.ahead), foreseen: false };
}

/** The depth at which an outcome is seen to come to hold; undefined where it isn't foreseen, or can't come. */
export function foreseenAt({ foreseen, foreseenMm, ahead }: Outcome): number | undefined {
  return foreseen ? (foreseenMm ?? ahead.holds?.fromMm) : undefined;
}

/** The parts that don't hold yet. */
function wanting(parts: readonly Outcome[]): readonly Outcome[] {
  return parts.filter((part) => part.state !== 'yes');
}

function spoken(parts: readonly Outcome[], word: ' and ' | ' or ') {
  const furthest = mostWanting(parts);
  const provisos = [...new Set(parts.flatMap((part) => part.proviso ?? []))];
  const unlogged = eachOnce(parts.flatMap((part) => part.unlogged ?? []));
  const byWord = eachOnce(parts.flatMap((part) => part.byWord ?? []));
  const needs = [...new Set(parts.flatMap((part) => part.needs ?? []))];
  const until = [...new Set(parts.flatMap((part) => part.until ?? []))].join(', ');
  return {
    ...(furthest?.amount === undefined ? {} : { amount: furthest.amount }),
    progress: parts.map((part) => part.progress).join('; '),
    reason: parts.map((part) => part.reason).join('; '),
    deciding: intervalsDown(parts.flatMap((part) => part.deciding)),
    ...(unlogged.length === 0 ? {} : { unlogged }),
    ...(needs.length === 0 ? {} : { needs }),
    ...(until === '' ? {} : { until }),
    ...(byWord.length === 0 ? {} : { byWord }),
    ...(provisos.length === 0 ? {} : { proviso: provisos.join(word) }),
  };
}

/** The part that is the furthest from what it needs: the bar of the whole. */
function mostWanting(parts: readonly Outcome[]): Outcome | undefined {
  const missing = (part: Outcome): number =>
    part.amount === undefined ? Number.NEGATIVE_INFINITY : part.amount.needMm - part.amount.haveMm;
  return [...parts].sort((a, b) => missing(b) - missing(a))[0];
}

/** Intervals from the top down, each metre once: those that overlap as one. */
function eachOnce(intervals: readonly Interval[]): readonly Interval[] {
  const apart: Interval[] = [];
  for (const each of intervalsDown(intervals)) {
    const above = apart.at(-1);
    if (above === undefined || each.fromMm >= above.toMm) apart.push(each);
    else if (each.toMm > above.toMm) apart.splice(-1, 1, { ...above, toMm: each.toMm });
  }
  return apart;
}

function intervalsDown(intervals: readonly Interval[]): readonly Interval[] {
  return [...intervals].sort((a, b) => a.fromMm - b.fromMm || a.toMm - b.toMm);
}
