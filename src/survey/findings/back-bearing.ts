import { defineFinding, type Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { degreesBetween, formatAzimuth } from '../../quantity/azimuth.ts';
import { type Direction, isSteep } from '../direction.ts';
import type { Station } from '../path/path.ts';

export const backBearingGiven = defineFinding({
  code: 'survey-back-bearing',
  severity: 'fault',
  title: 'An azimuth is the back-bearing of the hole.',
  rationale:
    'Sighted from the wrong end, or with the tool turned about, the azimuth comes out 180° round. The numbers look like any others and the ' +
    'hole is drawn going the opposite way.',
});

/** Within this of the opposite direction an azimuth is taken for the back-bearing, degrees. */
const OPPOSITE_DEG = 20;

/** Stations whose azimuth is opposite to the direction the hole was set or planned in, both of one north; not where steep. */
export function checkBackBearing(
  stations: readonly Station[],
  along: Direction,
  place: Place,
): readonly Finding[] {
  return stations
    .filter(
      (one) =>
        !isSteep(one) &&
        !isSteep(along) &&
        Math.abs(degreesBetween(one.azimuth.deg, along.azimuth.deg)) >= 180 - OPPOSITE_DEG,
    )
    .map((one) =>
      backBearingGiven.at(
        { ...place, fromMm: one.depthMm },
        {
          excerpt: `azimuth ${formatAzimuth(one.azimuth)}; the hole goes ${formatAzimuth(along.azimuth)}`,
          problem: 'this azimuth is the back-bearing: 180° from where the hole goes',
          remedy: 'Check which way it was sighted; record it again, turned by 180°.',
        },
      ),
    );
}
