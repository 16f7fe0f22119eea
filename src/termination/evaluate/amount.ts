import { formatDepth } from '../../quantity/depth.ts';
import type { Tri } from '../../quantity/tri.ts';
import type { History, Step } from './history.ts';

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

/** How much there is of what is needed: `4 of 6 m`; where there is more, `21 m (1 needed)`. Lengths in millimetres. */
export function ofNeeded(haveMm: number, needMm: number): string {
  return haveMm > needMm
    ? `${formatDepth(haveMm)} m (${formatDepth(needMm)} needed)`
    : `${formatDepth(haveMm)} of ${formatDepth(needMm)} m`;
}

/** The history of "at least `need`" over legs from the top down. Above the first leg's reach, at depth 0, the state is `atTop`. */
export function historyOf(legs: readonly Leg[], need: number, atTop: Tri = 'no'): History {
  const steps: Step[] = [{ atMm: 0, state: atTop }];
  let fromMm = 0;
  let state = atTop;
  const turn = (atMm: number, next: Tri): void => {
    if (next !== state) steps.push({ atMm, state: next });
    state = next;
  };
  for (const leg of legs) {
    if (leg.toMm <= fromMm) continue;
    const atFoot = enough(leg.sure, leg.possible, need);
    turn(fromMm + 1, stateOn(leg, fromMm + 1, need));
    if (state !== atFoot)
      for (const atMm of turnsIn(leg, fromMm + 1, need)) turn(atMm, stateOn(leg, atMm, need));
    fromMm = leg.toMm;
  }
  return steps;
}

/** The state at a depth that the leg reaches over. */
function stateOn(leg: Leg, atMm: number, need: number): Tri {
  const up = leg.toMm - atMm;
  return enough(leg.sure - leg.sureSlope * up, leg.possible - leg.possibleSlope * up, need);
}

/**
 * The depths inside a leg at which the state can turn. Both amounts are straight lines: where top and foot of a leg are alike so
 * is all between them, and this need not be asked.
 */
function turnsIn(leg: Leg, topMm: number, need: number): readonly number[] {
  const sure = crossing(leg.toMm, leg.sure, leg.sureSlope, need);
  const possible = crossing(leg.toMm, leg.possible, leg.possibleSlope, need);
  const turns = sure < possible ? [sure, possible] : [possible, sure];
  return turns.filter((turn) => turn > topMm && turn <= leg.toMm);
}

/** The first whole depth past which a straight line has come over `need`, or fallen under it; infinite where it never does. */
function crossing(toMm: number, end: number, slope: number, need: number): number {
  if (slope === 0) return Number.POSITIVE_INFINITY;
  const meets = toMm - (end - need) / slope;
  return slope > 0 ? Math.ceil(meets) : Math.floor(meets) + 1;
}
