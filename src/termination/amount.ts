import type { Tri } from '../quantity/tri.ts';
import { type History, historyFrom, type Step } from './history.ts';

/**
 * A stretch of hole over which an amount grows, falls or stands: `sure` counts what the record supports, `possible` also what
 * it can't deny, so the true amount lies between them. A leg reaches from the foot of the leg above (not included) to its own
 * foot (included); at D it is `sure - sureSlope × (toMm - D)`.
 */
export type Leg = {
  readonly toMm: number;
  readonly sure: number;
  readonly sureSlope: number;
  readonly possible: number;
  readonly possibleSlope: number;
};

/** Whether an amount between two bounds is enough: yes when the lower is, no when not even the upper is. */
export function enough(sure: number, possible: number, need: number): Tri {
  if (sure >= need) return 'yes';
  return possible >= need ? 'cannot tell' : 'no';
}

/** The history of "at least `need`" over legs from the top down. Above the first leg's reach, at depth 0, the state is `atTop`. */
export function historyOf(legs: readonly Leg[], need: number, atTop: Tri = 'no'): History {
  const steps: Step[] = [{ atMm: 0, state: atTop }];
  let fromMm = 0;
  for (const leg of legs) {
    if (leg.toMm > fromMm) pushSteps(steps, leg, fromMm, need);
    fromMm = Math.max(fromMm, leg.toMm);
  }
  return historyFrom(steps);
}

function pushSteps(steps: Step[], leg: Leg, fromMm: number, need: number): void {
  if (leg.sureSlope === 0 && leg.possibleSlope === 0) {
    steps.push({ atMm: fromMm + 1, state: enough(leg.sure, leg.possible, need) });
    return;
  }
  const cuts = [
    fromMm + 1,
    ...turn(leg.toMm, leg.sure, leg.sureSlope, need),
    ...turn(leg.toMm, leg.possible, leg.possibleSlope, need),
  ]
    .filter((cut) => cut > fromMm && cut <= leg.toMm)
    .sort((a, b) => a - b);
  for (const atMm of cuts) {
    const up = leg.toMm - atMm;
    const state = enough(leg.sure - leg.sureSlope * up, leg.possible - leg.possibleSlope * up, need);
    steps.push({ atMm, state });
  }
}

/** The first depth past which a straight line has come over `need`, or fallen under it, if it does. */
function turn(toMm: number, end: number, slope: number, need: number): readonly number[] {
  if (slope === 0) return [];
  const crossing = toMm - (end - need) / slope;
  return slope > 0 ? [Math.ceil(crossing)] : [Math.floor(crossing) + 1];
}
