import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { type Depth, formatDepth } from '../../quantity/depth.ts';
import { shotBelowDrilled } from '../findings.ts';
import { placeOfShot, type RunWithShots } from '../shots/run-with-shots.ts';

/** Metres to an international foot, exact. */
export const METRES_PER_FOOT = 0.3048;

/** Shots below the drilled depth; where the depth fits once it is taken as feet, that is named as the likely cause. */
export function checkShotBelowDrilled(
  { run, shots }: RunWithShots,
  drilledMm: Depth,
  place: Place,
): readonly Finding[] {
  return shots
    .filter((shot) => shot.rejected === undefined && shot.depthMm > drilledMm)
    .map((shot) =>
      shotBelowDrilled.at(placeOfShot(place, run, shot), {
        problem: `the shot is at ${formatDepth(shot.depthMm)} m, the hole is drilled to ${formatDepth(drilledMm)} m`,
        remedy: likelyCause(shot.depthMm, run.toolOffsetMm, drilledMm),
      }),
    );
}

function likelyCause(depthMm: number, offsetMm: number, drilledMm: number): string {
  const asFeetMm = depthMm * METRES_PER_FOOT;
  if (depthMm - drilledMm <= offsetMm)
    return `Likely the bit depth: less the tool offset it is ${formatDepth(depthMm - offsetMm)} m.`;
  if (asFeetMm <= drilledMm)
    return `Likely feet: × ${METRES_PER_FOOT} it is ${(asFeetMm / 1000).toFixed(1)} m. Check the unit on the sheet.`;
  return 'Check the digits and the hole; is a rod done not recorded?';
}
