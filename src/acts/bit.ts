import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeNouns, holeThings } from '../hole/hole.ts';
import { type Depth, formatDepth } from '../quantity/depth.ts';
import type { Document, Thing } from '../record/document.ts';
import { headsOf } from '../standing/heads.ts';

/** Diameters that a bit for such holes can have, millimetres; what lies outside is a slip or another unit. */
const SMALLEST_MM = 50;
const LARGEST_MM = 500;

/** A bit wears by tenths of a millimetre a rod: one that lost more between two gauges is another bit, or a slip (from memory). */
const MOST_WORN_MM = 5;

/**
 * The bit as measured at a depth, the drilled one if none is given; measured again at that depth it is put right. What one and the same bit
 * can't measure is asked first: two gauges at one depth, a bit that grows, one that wears at a jump.
 */
export function measureBit(
  hole: Document,
  said: { readonly bitMm: number; readonly atMm?: Depth },
  maker: Maker,
  insisted = false,
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
  const doubt = insisted ? undefined : doubtOf(hole, bitMm, depthMm);
  if (doubt !== undefined)
    return refused(
      REFUSALS.asked.at(place, {
        problem: doubt,
        remedy: 'Read the gauge again, or ask the driller. If it is right, add = at the end.',
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

/** What of a gauge one and the same bit could not measure beside the gauges of the hole; undefined where nothing speaks against it. */
function doubtOf(hole: Document, bitMm: number, depthMm: number): string | undefined {
  const gauges = [...holeNouns(hole, 'bits')].sort((a, b) => a.depthMm - b.depthMm);
  const here = gauges.findLast((each) => each.depthMm === depthMm);
  if (here !== undefined && here.bitMm !== bitMm)
    return `at ${formatDepth(depthMm)} m the bit is recorded as ${here.bitMm} mm already, by ${here.by}`;
  const above = gauges.findLast((each) => each.depthMm < depthMm);
  if (above === undefined) return undefined;
  const was = `${above.bitMm} mm at ${formatDepth(above.depthMm)} m`;
  if (bitMm > above.bitMm) return `${bitMm} mm is more than ${was}: a bit does not grow. Is it a new one?`;
  return above.bitMm - bitMm > MOST_WORN_MM
    ? `${bitMm} mm is ${Number((above.bitMm - bitMm).toFixed(2))} mm less than ${was}: a new bit, or a slip?`
    : undefined;
}
