import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { degreesBetween } from '../../quantity/azimuth.ts';
import { declinationSlip } from '../findings.ts';
import { meanOnCircle } from '../norths/circle.ts';
import { formatEastWest } from '../norths/norths.ts';

/** Fewer shots than this can't tell a constant offset from a bend. */
const FEWEST = 3;
/** A declination smaller than this hides in the noise of the azimuths, degrees. */
const SMALLEST_DEG = 1;

/** An azimuth of a run and the one it should have there by something that isn't that run, both from one north, degrees. */
export interface AzimuthPair {
  readonly measuredDeg: number;
  readonly referenceDeg: number;
}

/**
 * The azimuths of a run against a reference (a better run, else the line-up): a constant offset of about the declination means
 * that it was applied twice (offset of its sign) or not at all (the opposite sign).
 */
export function checkDeclinationSlip(
  pairs: readonly AzimuthPair[],
  declinationDeg: number,
  place: Place,
): readonly Finding[] {
  if (pairs.length < FEWEST || Math.abs(declinationDeg) < SMALLEST_DEG) return [];
  const offsets = meanOnCircle(pairs.map((pair) => degreesBetween(pair.measuredDeg, pair.referenceDeg)));
  if (offsets === undefined) return [];
  const slack = Math.max(0.5, Math.abs(declinationDeg) / 4);
  const near = (deg: number) => Math.abs(degreesBetween(offsets.meanDeg, deg)) <= slack;
  if (offsets.spreadDeg > Math.max(1, slack) || !(near(declinationDeg) || near(-declinationDeg))) return [];
  const twice = near(declinationDeg);
  return [
    declinationSlip.at(place, {
      excerpt: `mean offset ${formatEastWest(degreesBetween(offsets.meanDeg, 0))}, declination ${formatEastWest(declinationDeg)}`,
      problem: `the run is turned by about the declination: it was likely applied ${twice ? 'twice' : 'not at all'}`,
      remedy: twice
        ? 'Ask whether the tool gives true azimuths already; if so, record the run as true.'
        : 'Ask whether the tool gives magnetic azimuths; if so, record the run as magnetic.',
    }),
  ];
}
