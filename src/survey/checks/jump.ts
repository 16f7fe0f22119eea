import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { metres } from '../../quantity/depth.ts';
import { inheritsLineUp } from '../blunders/evidence.ts';
import { angleBetweenDeg, radians } from '../direction.ts';
import { jump } from '../findings.ts';
import { BEND_LENGTH_M } from '../path/severity.ts';
import type { SurveySettings } from '../settings.ts';
import type { RankedStation } from '../shots/runs.ts';

/** An angle this small is the noise of two readings, however close together they are, degrees. */
const NOISE_DEG = 1;
/** So many sigma of the two readings' errors are not yet a jump: a hole has many pairs of stations, and each may be the one. */
const SIGMAS = 3.5;

/**
 * Neighbouring stations (in order of depth, one north) whose angle in space is more than rods bend over their distance, allowing for
 * the errors of both readings: the line-up's own at the first shot, the systematic ones too where two runs meet.
 */
export function checkJumps(
  stations: readonly RankedStation[],
  settings: Pick<SurveySettings, 'jumpPer30m' | 'toolErrors'>,
  place: Place,
): readonly Finding[] {
  return stations.slice(1).flatMap((to, index) => {
    const from = stations[index]!;
    const lengthM = metres(to.depthMm - from.depthMm);
    const angle = angleBetweenDeg(from, to);
    const bend = (settings.jumpPer30m * lengthM) / BEND_LENGTH_M;
    const allowed = Math.max(
      NOISE_DEG,
      Math.hypot(bend, SIGMAS * apartSigmaDeg(from, to, settings.toolErrors)),
    );
    if (lengthM <= 0 || angle <= allowed) return [];
    return [
      jump.at(
        { ...place, fromMm: from.depthMm, toMm: to.depthMm },
        {
          problem: `the direction changes by ${angle.toFixed(1)}° in ${lengthM.toFixed(0)} m; ${allowed.toFixed(1)}° is the most expected`,
          remedy: 'Check the digits of both readings. Ask the driller to take the deeper shot again.',
        },
      ),
    ];
  });
}

/** One sigma, degrees in space, of the difference of two readings by their tools' errors alone: the larger of dip and turn. */
export function apartSigmaDeg(
  a: Pick<RankedStation, 'dip' | 'toolClass' | 'run'>,
  b: Pick<RankedStation, 'dip' | 'toolClass' | 'run'>,
  errors: SurveySettings['toolErrors'],
): number {
  const [own, other] = [errors[a.toolClass], errors[b.toolClass]];
  // What is systematic in a run is the same in both of its readings.
  const apart = a.run === b.run ? 0 : 1;
  const turned = (one: typeof a) =>
    one.toolClass === 'line-up' ? 0 : apart * errors[one.toolClass].azimuthSystematicDeg;
  const azimuthDeg = Math.hypot(
    own.azimuthRandomDeg,
    other.azimuthRandomDeg,
    turned(a),
    turned(b),
    // A gyro aligned to the line-up is off as the line-up is, so that between the two it does not show.
    inheritsLineUp(a) === inheritsLineUp(b) ? 0 : errors['line-up'].azimuthSystematicDeg,
  );
  const dipDeg = Math.hypot(
    own.dipRandomDeg,
    other.dipRandomDeg,
    apart * own.dipSystematicDeg,
    apart * other.dipSystematicDeg,
  );
  return Math.max(dipDeg, azimuthDeg * Math.cos(radians((a.dip + b.dip) / 2)));
}
