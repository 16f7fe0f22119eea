import { ok, type Result, refused } from '../../finding/finding.ts';
import { formatDepth } from '../../quantity/depth.ts';
import type { Change, Document, Thing } from '../../record/document.ts';
import type { CollarState, Decision } from '../ending.ts';
import { REFUSALS } from '../findings.ts';
import type { DrillingInterval, HoleState } from '../header.ts';
import { headerOf, holeNouns, holeThings } from '../hole.ts';
import type { Made, Maker } from './made.ts';
import { closedRefusal } from './open-hole.ts';

/** Which states lead to which. */
const NEXT: { readonly [state in HoleState]: readonly HoleState[] } = {
  planned: ['drilling', 'abandoned'],
  drilling: ['suspended', 'abandoned', 'complete'],
  suspended: ['drilling', 'abandoned', 'complete'],
  abandoned: ['drilling'],
  complete: ['drilling'],
};

/** Drilling starts, or goes on after a suspension: a drilling interval opens (its method, bit and rig). */
export function startDrilling(hole: Document, interval: DrillingInterval, maker: Maker): Result<Made> {
  const wrong = stateRefusal(hole, 'drilling');
  if (wrong) return wrong;
  return ok({
    what: `drilling from ${formatDepth(interval.fromMm)} m with ${interval.rig}`,
    changes: [
      { patch: ['hole', 'hole'], set: { state: 'drilling' }, unset: ['stateReason'] },
      { put: ['drilling', maker.newId()], thing: interval as Thing },
    ],
  });
}

/** Drilling stops for now, or for good, with the reason: the open drilling interval ends at the drilled depth. */
export function stopDrilling(
  hole: Document,
  state: 'suspended' | 'abandoned',
  because: string,
  drilledMm: number,
  maker: Maker,
): Result<Made> {
  const wrong = stateRefusal(hole, state);
  if (wrong) return wrong;
  return ok({
    what: `${state} at ${formatDepth(drilledMm)} m: ${because}`,
    changes: [
      { patch: ['hole', 'hole'], set: { state, stateReason: because } },
      ...closedIntervals(hole, drilledMm, maker),
    ],
  });
}

/**
 * The hole ends: the decision with the verdict at that moment, the final depth by rod count, how the collar was left.
 * Whether a reason is needed is termination/'s to say; it is recorded here as given.
 */
export function endHole(
  hole: Document,
  decision: Decision,
  collarState: CollarState,
  maker: Maker,
): Result<Made> {
  const wrong = stateRefusal(hole, 'complete');
  if (wrong) return wrong;
  return ok({
    what: `ended at ${formatDepth(decision.depthMm)} m`,
    changes: [
      { patch: ['hole', 'hole'], set: { state: 'complete' }, unset: ['stateReason'] },
      ...closedIntervals(hole, decision.depthMm, maker),
      { put: ['decisions', maker.newId()], thing: decision as Thing },
      { put: ['collarStates', maker.newId()], thing: collarState as Thing },
    ],
  });
}

/** A decision that ends nothing: extended past the plan, or the geologist's hold. */
export function recordDecision(hole: Document, decision: Decision, maker: Maker): Result<Made> {
  const closed = closedRefusal(hole);
  if (closed) return refused(closed);
  return ok({
    what: `${decision.kind} at ${formatDepth(decision.depthMm)} m${
      decision.toMm === undefined ? '' : `, to ${formatDepth(decision.toMm)} m`
    }`,
    changes: [{ put: ['decisions', maker.newId()], thing: decision as Thing }],
  });
}

/** A closed hole is opened again, with who and why: a recorded act. It comes back suspended: drilling has its own start. */
export function reopenHole(hole: Document, decision: Decision, maker: Maker): Result<Made> {
  const header = headerOf(hole);
  if (header.state !== 'complete') {
    return refused(
      REFUSALS.stateWrong.at(
        { hole: header.name },
        { problem: `it is ${header.state}, not closed`, remedy: 'Nothing to reopen: go on with it.' },
      ),
    );
  }
  return ok({
    what: `reopened: ${decision.reason ?? ''}`,
    changes: [
      {
        patch: ['hole', 'hole'],
        set: { state: 'suspended', stateReason: `reopened: ${decision.reason ?? ''}` },
      },
      { put: ['decisions', maker.newId()], thing: decision as Thing },
    ],
  });
}

/** How the collar was left, on its own: an open collar is a hazard whenever it is unattended. */
export function recordCollarState(collarState: CollarState, maker: Maker): Made {
  return {
    what: `collar ${collarState.state}`,
    changes: [{ put: ['collarStates', maker.newId()], thing: collarState as Thing }],
  };
}

/** The state of the collar recorded last, or undefined. */
export function lastCollarState(hole: Document): CollarState | undefined {
  const all = holeNouns(hole, 'collarStates');
  // Two laptops that say different things of it: the one that says that it is open counts, until someone has looked.
  const isAsked = holeNouns(hole, 'questions').some(
    (each) => each.table === 'collarStates' && each.state === 'open',
  );
  return (isAsked ? all.findLast(({ state }) => state === 'open') : undefined) ?? all.at(-1);
}

function closedIntervals(hole: Document, depthMm: number, maker: Maker): readonly Change[] {
  return holeThings(hole, 'drilling')
    .filter(([, interval]) => interval.toMm === undefined)
    .map(
      ([id, interval]): Change => ({
        patch: ['drilling', id],
        set: { toMm: Math.max(depthMm, interval.fromMm), endedAt: maker.at },
      }),
    );
}

function stateRefusal(hole: Document, next: HoleState): Result<Made> | undefined {
  const header = headerOf(hole);
  if (NEXT[header.state].includes(next) && !(header.state === 'complete' && next === 'drilling'))
    return undefined;
  const remedy =
    header.state === 'complete'
      ? 'Reopen it first, with the reason.'
      : header.state === 'planned'
        ? 'Start drilling it first.'
        : 'Look at its state on the list of holes.';
  return refused(
    REFUSALS.stateWrong.at(
      { hole: header.name },
      { problem: `the hole is ${header.state}: it can't become ${next}`, remedy },
    ),
  );
}
