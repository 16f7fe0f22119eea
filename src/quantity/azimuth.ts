/**
 * The norths an azimuth can be counted from. `grid` is the north of the project's map grid, `mine-grid` that of
 * its own local grid.
 */
export const NORTHS = ['true', 'magnetic', 'grid', 'mine-grid'] as const;
export type North = (typeof NORTHS)[number];

/** The norths by the letter that is typed behind an azimuth. */
export const NORTH_LETTERS: { readonly [letter: string]: North } = {
  t: 'true',
  m: 'magnetic',
  g: 'grid',
  l: 'mine-grid',
};

/** Degrees clockwise from a stated north, 0 ≤ deg < 360. `epoch` is the decimal year of a magnetic north. */
export interface Azimuth {
  readonly deg: number;
  readonly north: North;
  readonly epoch?: number;
}

/** Any finite angle folded into 0 ≤ deg < 360. */
export function foldDegrees(deg: number): number {
  const folded = deg % 360;
  const positive = folded < 0 ? folded + 360 : folded;
  return positive >= 360 ? 0 : positive + 0;
}

/** Azimuth of a folded angle. Throws RangeError unless finite. */
export function azimuth(deg: number, north: North, epoch?: number): Azimuth {
  if (!Number.isFinite(deg)) throw new RangeError(`azimuth must be finite degrees, got ${deg}`);
  return epoch === undefined ? { deg: foldDegrees(deg), north } : { deg: foldDegrees(deg), north, epoch };
}

/** The signed difference a − b on the circle, in −180 < d ≤ 180 degrees; both must be of the same north. */
export function degreesBetween(aDeg: number, bDeg: number): number {
  const turned = foldDegrees(aDeg - bDeg);
  return turned > 180 ? turned - 360 : turned;
}

/** `090.0° grid`: three digits and a decimal, never without its north. */
export function formatAzimuth(a: Azimuth): string {
  const tenths = Math.round(a.deg * 10) % 3600;
  const name = a.north === 'mine-grid' ? 'mine grid' : a.north;
  return `${(tenths / 10).toFixed(1).padStart(5, '0')}° ${name}`;
}
