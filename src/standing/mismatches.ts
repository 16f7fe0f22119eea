import type { RodDone } from '../hole/drilled.ts';
import { holeThings } from '../hole/hole.ts';
import type { Document, Id } from '../record/document.ts';

/** A rod done, with its id. */
export type RodThing = readonly [Id, RodDone];

/** Rods whose mismatch was noted and waits to be mended, the uppermost first: it is mended first, for those below may follow from it. */
export function waitingMismatches(hole: Document): readonly RodThing[] {
  return holeThings(hole, 'rods')
    .filter(([, rod]) => rod.unmended === true)
    .sort(([, a], [, b]) => a.depthMm - b.depthMm);
}

/** The rod of that id whose mismatch waits; undefined where there is none. */
export function waitingRod(hole: Document, id: Id | undefined): RodThing | undefined {
  return waitingMismatches(hole).find(([each]) => each === id);
}
