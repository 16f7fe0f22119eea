import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeThings } from '../hole/hole.ts';
import { type Depth, formatDepth } from '../quantity/depth.ts';
import type { Document, Thing } from '../record/document.ts';
import { headsOf } from '../standing/heads.ts';

/** Diameters that a bit for such holes can have, millimetres; what lies outside is a slip or another unit. */
const SMALLEST_MM = 50;
const LARGEST_MM = 500;

/** The bit as measured at a depth, the drilled one if none is given; measured again at that depth it is put right. */
export function measureBit(
  hole: Document,
  said: { readonly bitMm: number; readonly atMm?: Depth },
  maker: Maker,
): Result<Made> {
  const { bitMm } = said;
  const { drilledMm } = headsOf(hole);
  const depthMm = said.atMm ?? drilledMm;
  const place = { hole: headerOf(hole).name, fromMm: depthMm };
  if (bitMm < SMALLEST_MM || bitMm > LARGEST_MM)
    return refused(
      REFUSALS.notThere.at(place, {
        problem: `${bitMm} mm is not a bit of such a hole`,
        remedy: `Type its diameter in millimetres, from ${SMALLEST_MM} to ${LARGEST_MM}: ;bit 138.6.`,
      }),
    );
  if (depthMm > drilledMm)
    return refused(
      REFUSALS.badInterval.at(place, {
        problem: `the hole is drilled to ${formatDepth(drilledMm)} m only`,
        remedy: 'Type the depth drilled when the bit was measured, or leave it out for now.',
      }),
    );
  const there = holeThings(hole, 'bits').findLast(([, each]) => each.depthMm === depthMm);
  const thing: Thing = { depthMm, bitMm, at: maker.at, by: maker.by };
  return ok({
    what: `bit measured ${bitMm} mm at ${formatDepth(depthMm)} m`,
    changes: [
      there === undefined
        ? { put: ['bits', maker.newId()], thing }
        : { patch: ['bits', there[0]], set: { bitMm, at: maker.at, by: maker.by } },
    ],
  });
}
