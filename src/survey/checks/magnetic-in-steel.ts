import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { SurveyRun } from '../../hole/direction.ts';
import { isCalledGyro } from '../blunders/north-blunders.ts';
import { magneticInSteel } from '../findings.ts';
import type { SurveySettings } from '../settings.ts';
import { placeOfShot, type RunWithShots, stands } from '../shots/run-with-shots.ts';

/** True where the azimuths of a run are unusable: a magnetic tool inside rods, or nearer to steel than allowed. */
export function azimuthUnusable(
  run: Pick<SurveyRun, 'toolClass' | 'inside' | 'steelMm'>,
  steelM: number,
): boolean {
  if (run.toolClass !== 'magnetic') return false;
  return run.inside === 'rods' || (run.steelMm !== undefined && run.steelMm < steelM * 1000);
}

/** Azimuths that are unusable for steel and not yet rejected. */
export function checkMagneticInSteel(
  { run, shots }: RunWithShots,
  settings: Pick<SurveySettings, 'steelM'>,
  place: Place,
): readonly Finding[] {
  if (!azimuthUnusable(run, settings.steelM)) return [];
  return shots.filter(stands).map((shot) =>
    magneticInSteel.at(placeOfShot(place, run, shot), {
      excerpt: `azimuth ${shot.azimuthDeg?.toFixed(1)}°, ${run.inside === 'rods' ? 'inside rods' : `${(run.steelMm ?? 0) / 1000} m from steel`}`,
      problem: 'a magnetic azimuth inside or near steel is unusable',
      remedy: isCalledGyro(run)
        ? 'The tool is called a gyro: if it is one, reject these shots and record the run again as a gyro, from the north it gives. Else reject the azimuth alone: the dip is kept.'
        : 'Reject the azimuth alone: the dip is kept. Ask the driller to survey again in open hole or with a gyro.',
    }),
  );
}
