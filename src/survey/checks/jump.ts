import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { metres } from '../../quantity/depth.ts';
import { angleBetweenDeg } from '../direction.ts';
import { jump } from '../findings.ts';
import type { Station } from '../path/path.ts';
import { BEND_LENGTH_M } from '../path/severity.ts';
import type { SurveySettings } from '../settings.ts';

/** An angle this small is the noise of two readings, however close together they are, degrees. */
const NOISE_DEG = 1;

/** Neighbouring stations (in order of depth, one north) whose angle in space is more than the limit over their distance. */
export function checkJumps(
  stations: readonly Station[],
  settings: Pick<SurveySettings, 'jumpPer30m'>,
  place: Place,
): readonly Finding[] {
  return stations.slice(1).flatMap((to, index) => {
    const from = stations[index]!;
    const lengthM = metres(to.depthMm - from.depthMm);
    const angle = angleBetweenDeg(from, to);
    const allowed = Math.max(NOISE_DEG, (settings.jumpPer30m * lengthM) / BEND_LENGTH_M);
    if (lengthM <= 0 || angle <= allowed) return [];
    return [
      jump.at(
        { ...place, fromMm: from.depthMm, toMm: to.depthMm },
        {
          problem: `the direction changes by ${angle.toFixed(1)}° in ${lengthM.toFixed(0)} m; ${allowed.toFixed(1)}° is the most expected`,
          remedy: 'Check the digits of both readings; take the deeper shot again.',
        },
      ),
    ];
  });
}
