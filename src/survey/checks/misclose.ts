import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { Shot } from '../../hole/direction.ts';
import { azimuth } from '../../quantity/azimuth.ts';
import { dip } from '../../quantity/dip.ts';
import { angleBetweenDeg, type Direction } from '../direction.ts';
import { misclose } from '../findings.ts';
import type { SurveySettings } from '../settings.ts';
import { type RunWithShots, stands } from '../shots/run-with-shots.ts';

/** Shots of the two passes this near to each other are compared, millimetres. */
const SAME_PLACE_MM = 1000;

/** An in run and an out run of one tool over the same metres: the largest angle in space between their readings. */
export function checkMisclose(
  inRun: RunWithShots,
  outRun: RunWithShots,
  settings: Pick<SurveySettings, 'miscloseDeg'>,
  place: Place,
): readonly Finding[] {
  const angles = inRun.shots.filter(stands).flatMap((shot) => {
    const back = outRun.shots.find(
      (other) => stands(other) && Math.abs(other.depthMm - shot.depthMm) < SAME_PLACE_MM,
    );
    return back === undefined
      ? []
      : [{ depthMm: shot.depthMm, deg: angleBetweenDeg(directionOfShot(shot), directionOfShot(back)) }];
  });
  const worst = angles.reduce((a, b) => (b.deg > a.deg ? b : a), { depthMm: 0, deg: 0 });
  if (worst.deg <= settings.miscloseDeg) return [];
  return [
    misclose.at(
      { ...place, fromMm: worst.depthMm, thing: inRun.run.tool },
      {
        problem: `in and out runs differ by up to ${worst.deg.toFixed(1)}°; ${settings.miscloseDeg.toFixed(1)}° is allowed`,
        remedy:
          'Run the tool again, slower and with longer stops; reject the shots of the worse run, or give the better one a higher rank.',
      },
    ),
  ];
}

function directionOfShot(shot: Shot): Direction {
  return { azimuth: azimuth(shot.azimuthDeg ?? 0, 'true'), dip: dip(shot.dipDeg) };
}
