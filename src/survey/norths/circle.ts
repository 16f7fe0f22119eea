import { degreesBetween, foldDegrees } from '../../quantity/azimuth.ts';
import { degrees, radians } from '../direction.ts';

/** Several angles on the circle taken together. */
export interface OnCircle {
  /** Their mean direction, 0 to under 360 degrees. */
  readonly meanDeg: number;
  /** The furthest any of them is from the mean, degrees. */
  readonly spreadDeg: number;
}

/** Shorter than this, the mean of unit vectors points nowhere: the angles cancel. */
const NO_DIRECTION = 1e-6;

/**
 * The mean of angles as directions: the angle of the sum of their unit vectors, so that 359° and 1° make 0°. Undefined for none,
 * and where they cancel (0° and 180°).
 */
export function meanOnCircle(degs: readonly number[]): OnCircle | undefined {
  const north = degs.reduce((sum, deg) => sum + Math.cos(radians(deg)), 0);
  const east = degs.reduce((sum, deg) => sum + Math.sin(radians(deg)), 0);
  if (degs.length === 0 || Math.hypot(north, east) / degs.length < NO_DIRECTION) return undefined;
  const meanDeg = foldDegrees(degrees(Math.atan2(east, north)));
  return { meanDeg, spreadDeg: Math.max(...degs.map((deg) => Math.abs(degreesBetween(deg, meanDeg)))) };
}
