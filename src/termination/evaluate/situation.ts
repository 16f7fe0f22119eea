import type { FeltByDriller, StreamFact } from '../../hole/drilled.ts';
import type { Decision } from '../../hole/ending.ts';
import type { Header, Plan } from '../../hole/header.ts';
import type { WaitingEvent } from '../../hole/log.ts';
import { type Depth, depthFromMm } from '../../quantity/depth.ts';
import type { Interval } from '../../quantity/interval.ts';
import type { Tri } from '../../quantity/tri.ts';
import type { LoggingSchema } from '../../schema/logging-schema.ts';
import type { Row } from '../../value/row.ts';

/** What a shot told about the direction of the hole, known from the depth it was taken at. */
export type DirectionKnown = {
  /** Depth of the rig when it was known. */
  readonly atMm: Depth;
  /** Distance of the deepest surveyed point from the plan. */
  readonly offPlanMm?: number;
  /** Miss at the target, the hole carried on as it goes. */
  readonly projectedMissMm?: number;
  /** True where the plan has no depth of a target: what hangs on one is then never known. */
  readonly noTarget?: true;
  /** Whether the target can still be reached. */
  readonly targetReachable?: Tri;
};

/** What the clock told, known from a depth on. */
export type PaceKnown = {
  readonly atMm: Depth;
  readonly metresPerHour?: number;
  /** Hours since the hole was started. */
  readonly hoursOnHole?: number;
};

/** A contact or zone that is expected, by depth along the hole. */
export type ExpectedZone = NonNullable<Plan['expects']>[number];

/** The geologist keeps the hole open, or wants to be called. */
type Hold = {
  readonly because: string;
  readonly by: string;
  readonly called?: string;
  readonly sinceMm: Depth;
};

/**
 * Everything that termination rules read about one hole, at one moment. Plain data: whoever is at the rig builds it
 * (standing/), and a part of it or an extension of it is a situation again.
 */
export type Situation = {
  readonly schema: LoggingSchema;
  readonly header: Pick<Header, 'logFromMm' | 'intervalMm' | 'rodMm' | 'firstRodOffsetMm'>;
  readonly plan?: Pick<Plan, 'depthMm' | 'targetMm'>;
  /** Rows from the top down, not overlapping. */
  readonly rows: readonly Row[];
  /** Events at a depth that no row holds yet: they make a condition hold, and never that it doesn't. */
  readonly waiting?: readonly Pick<WaitingEvent, 'field' | 'code' | 'atMm' | 'number'>[];
  /** The foot of unbroken cover, for words. Rows below a gap are read all the same. */
  readonly loggedMm: Depth;
  /** The drilled head: where the rig is. */
  readonly drilledMm: Depth;
  /** Where the hole is cut (`--at`): it is so deep, though nothing be drilled or logged just above. */
  readonly cutMm?: Depth;
  /** What was seen at the drilled head, in the order it was recorded: where two facts say the same thing of a metre, the later stands. */
  readonly stream: readonly StreamFact[];
  /** The driller's word on metres, in the order it was recorded: of two on one metre the later counts. None where nothing was said. */
  readonly felt?: readonly Pick<FeltByDriller, 'fromMm' | 'toMm' | 'felt'>[];
  /** Metres where a void was logged once, and cleared: the driller's word that none was felt can't stand for them. */
  readonly voidsCleared?: readonly Interval[];
  readonly expects: readonly ExpectedZone[];
  /** By depth, the shallowest first; none where nothing is known. */
  readonly direction: readonly DirectionKnown[];
  readonly pace: readonly PaceKnown[];
  /** Metres drilled in the other holes that share the metre budget. */
  readonly usedElsewhereMm?: number;
  /** Decisions made on the hole's end so far, the first one first: what was called about once is not asked again. */
  readonly decisions?: readonly Decision[];
  readonly hold?: Hold;
  /** A stop of the driller's for safety or hole condition that is not over. */
  readonly openStop?: { readonly because: string; readonly by: string };
};

/** Below a foot at which an event waits. */
const NEXT_MM = 100;

/**
 * How deep the hole is at least, for rules that look back: the last rod done, the deepest row where the log goes past it, the foot of a
 * cavity that the rods dropped into, or an event that waits for its row: where something was met the bit has been.
 */
export function deepestMm(situation: Situation): number {
  const { drilledMm, loggedMm, cutMm = depthFromMm(0), rows, felt = [], waiting = [] } = situation;
  const dropped = felt.filter((each) => each.felt === 'cavity').map(({ toMm }) => toMm);
  const known = Math.max(drilledMm, loggedMm, cutMm, rows.at(-1)?.toMm ?? 0, ...dropped);
  // A decimetre more where it was met at the very foot: no event has a length.
  return waiting.reduce((foot, { atMm }) => (atMm >= foot ? Math.max(atMm, known + NEXT_MM) : foot), known);
}
