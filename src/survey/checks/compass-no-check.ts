import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { degreesBetween } from '../../quantity/azimuth.ts';
import { compassDistances, compassMagneticGround } from '../findings.ts';
import type { SurveySettings } from '../settings.ts';

/** The mean of the compass readings taken at one distance from the rig. */
export interface DistanceMean {
  readonly distanceM: number;
  readonly meanDeg: number;
}

/** Compass means clear of the rig: there must be two distances, and they must agree within the settings. */
export function checkCompassDistances(
  means: readonly DistanceMean[],
  settings: Pick<SurveySettings, 'compassNearestM' | 'compassAgreementDeg'>,
  place: Place,
): readonly Finding[] {
  const [nearest] = means;
  const furthest = means[means.length - 1];
  if (nearest === undefined || furthest === undefined || nearest === furthest)
    return [
      compassDistances.at(place, {
        problem: `the compass was read at ${means.length} distance${means.length === 1 ? '' : 's'} clear of the rig, not two`,
        remedy: `Read it at two distances, both ${settings.compassNearestM} m or more from the rig.`,
      }),
    ];
  const apart = Math.max(...means.map((mean) => Math.abs(degreesBetween(mean.meanDeg, furthest.meanDeg))));
  if (apart <= settings.compassAgreementDeg) return [];
  return [
    compassDistances.at(place, {
      excerpt: means.map((mean) => `${mean.meanDeg.toFixed(1)}° at ${mean.distanceM} m`).join(', '),
      problem: `compass readings at different distances disagree by ${apart.toFixed(1)}°: not used`,
      remedy:
        'Step further from the rig and other steel and read again, or check with sight pegs. Ask the driller to read out the alignment device, if the rig has one.',
    }),
  ];
}

/** In magnetic ground the compass alone is refused. */
export function checkMagneticGround(magneticGround: boolean, place: Place): readonly Finding[] {
  return magneticGround
    ? [
        compassMagneticGround.at(place, {
          problem: 'the ground here is magnetic: a compass alone is not a check',
          remedy:
            'Check with sight pegs. Ask the driller to read out the alignment device, if the rig has one.',
        }),
      ]
    : [];
}
