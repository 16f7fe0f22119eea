import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { Shot } from '../../hole/direction.ts';
import { type Depth, formatDepth } from '../../quantity/depth.ts';
import { shotBelowDrilled } from '../findings.ts';
import type { SurveySettings } from '../settings.ts';
import { placeOfShot, type RunWithShots } from '../shots/run-with-shots.ts';
import { METRES_PER_FOOT, swappedDigits } from './misread-depth.ts';

/** Where single shots are taken: the first, and how far apart. */
type ShotSchedule = Pick<SurveySettings, 'firstShotM' | 'shotEveryM'>;

/** Shots below the drilled depth; where the depth fits once it is taken as feet, or with two digits swapped, the likelier is named. */
export function checkShotBelowDrilled(
  { run, shots }: RunWithShots,
  drilledMm: Depth,
  schedule: ShotSchedule,
  place: Place,
): readonly Finding[] {
  return shots
    .filter((shot) => shot.rejected === undefined && shot.depthMm > drilledMm)
    .map((shot) =>
      shotBelowDrilled.at(placeOfShot(place, run, shot), {
        problem: `the shot is at ${formatDepth(shot.depthMm)} m, the hole is drilled to ${formatDepth(drilledMm)} m`,
        remedy: likelyCause(shot.depthMm, run, drilledMm, { ...schedule, lastM: lastAbove(shots, shot) }),
      }),
    );
}

/** A depth this near to one of the schedule is on it, metres: a shot is taken at the end of a rod. */
const ON_SCHEDULE_M = 1.5;

/** The deepest other shot of the run above a depth, metres; 0 where it is the first. */
function lastAbove(shots: readonly Shot[], { depthMm }: Shot): number {
  const above = shots.filter((shot) => shot.rejected === undefined && shot.depthMm < depthMm);
  return Math.max(0, ...above.map((shot) => shot.depthMm / 1000));
}

/** What the depth likely was, the better-supported first: single shots are taken by the project's schedule. */
function likelyCause(
  depthMm: number,
  { toolOffsetMm, pass }: RunWithShots['run'],
  drilledMm: Depth,
  { firstShotM, shotEveryM, lastM }: ShotSchedule & { readonly lastM: number },
): string {
  if (depthMm - drilledMm <= toolOffsetMm)
    return `Likely the bit depth: less the tool offset it is ${formatDepth(depthMm - toolOffsetMm)} m.`;
  const scheduled = (asM: number) => {
    const steps = Math.max(0, Math.round((asM - firstShotM) / shotEveryM));
    const isNext = lastM > 0 && Math.abs(asM - lastM - shotEveryM) <= ON_SCHEDULE_M;
    return pass === 'single' && (isNext || Math.abs(asM - firstShotM - steps * shotEveryM) <= ON_SCHEDULE_M);
  };
  // A shot that is typed next is deeper than those before it.
  const fits = (asM: number, slackM = 0) => asM > lastM && (asM - slackM) * 1000 <= drilledMm;
  const digits = swappedDigits(depthMm / 1000)
    .filter((asM) => fits(asM) && scheduled(asM))
    .map((asM) => ({
      asM,
      words: `digits swapped: ${asM.toFixed(1)} m is on the schedule of shots. Check the sheet`,
    }));
  // Whole feet are up to half a foot off the metres they were turned from.
  const asFeetM = (depthMm / 1000) * METRES_PER_FOOT;
  const feet = fits(asFeetM, METRES_PER_FOOT)
    ? [
        {
          asM: asFeetM,
          words: `feet: × ${METRES_PER_FOOT} it is ${asFeetM.toFixed(1)} m. Check the unit on the sheet`,
        },
      ]
    : [];
  const [best] = [...feet, ...digits].sort((a, b) => Number(scheduled(b.asM)) - Number(scheduled(a.asM)));
  if (best !== undefined) return `Likely ${best.words}.`;
  return 'Check the digits and the hole; is a rod done not recorded?';
}
