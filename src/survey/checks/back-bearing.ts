import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { degreesBetween, formatAzimuth } from '../../quantity/azimuth.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { type Direction, isSteep } from '../direction.ts';
import { backBearingGiven } from '../findings.ts';
import type { Station } from '../path/path.ts';

/** Within this of the opposite direction an azimuth is taken for the back-bearing, degrees. */
const OPPOSITE_DEG = 20;

/** True where an azimuth is opposite to the direction the hole was set or planned in, both of one north; never where steep. */
export function isBackBearing(one: Direction, along: Direction): boolean {
  if (isSteep(one) || isSteep(along)) return false;
  return Math.abs(degreesBetween(one.azimuth.deg, along.azimuth.deg)) >= 180 - OPPOSITE_DEG;
}

/** Stations whose azimuth is opposite to the direction the hole was set or planned in, both of one north; not where steep. */
export function checkBackBearing(
  stations: readonly Station[],
  along: Direction,
  place: Place,
): readonly Finding[] {
  return stations
    .filter((one) => isBackBearing(one, along))
    .map((one) =>
      backBearingGiven.at(
        { ...place, fromMm: one.depthMm },
        {
          excerpt: `azimuth ${formatAzimuth(one.azimuth)}; the hole goes ${formatAzimuth(along.azimuth)}`,
          problem: 'this azimuth is the back-bearing: 180° from where the hole goes',
          remedy: `Check which way it was sighted. If it was backwards, correct it, turned by 180°: ;shot ${formatDepth(one.depthMm)}, its dip, the azimuth, then corrects (or c on F6).`,
        },
      ),
    );
}
