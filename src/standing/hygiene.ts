import { headerOf, holeNouns, holeThings } from '../hole/hole.ts';
import { type Depth, depthFromMm } from '../quantity/depth.ts';
import type { Document, Id } from '../record/document.ts';
import type { HygieneRod } from '../sampling/recovery/hygiene.ts';

/** A rod done, with its id and the metres that it drilled. */
export interface DrilledRod extends HygieneRod {
  readonly id: Id;
  readonly fromMm: Depth;
  readonly toMm: Depth;
}

/** The rods of a hole from the top down, each from the foot of the one before, with what was seen of its hygiene. */
export function rodsDown(hole: Document): readonly DrilledRod[] {
  const seen = holeNouns(hole, 'hygiene');
  const rods = [...holeThings(hole, 'rods')].sort(([, a], [, b]) => a.depthMm - b.depthMm);
  return rods.map(([id, rod], index): DrilledRod => {
    const hygiene = seen.findLast((each) => each.rod === id);
    return {
      id,
      rod: rod.rod,
      fromMm: depthFromMm(rods[index - 1]?.[1].depthMm ?? headerOf(hole).logFromMm),
      toMm: rod.depthMm,
      ...(hygiene === undefined ? {} : { hygiene }),
    };
  });
}
