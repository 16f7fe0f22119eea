import { type Azimuth, azimuth, type North } from '../../quantity/azimuth.ts';

/** The angles between the norths of a place, degrees; an angle that isn't known is left out. */
export interface NorthAngles {
  /** Bearing of magnetic north from true north, east positive. */
  readonly declinationDeg?: number;
  /** Bearing of map grid north from true north, east positive. Some national manuals print the opposite sign. */
  readonly convergenceDeg?: number;
  /** Bearing of mine grid north from map grid north, clockwise positive. */
  readonly mineGridRotationDeg?: number;
}

/** Bearing of a north from true north, degrees, or undefined when an angle for it isn't known. */
function northFromTrue(north: North, angles: NorthAngles): number | undefined {
  if (north === 'true') return 0;
  if (north === 'magnetic') return angles.declinationDeg;
  if (north === 'grid' || angles.convergenceDeg === undefined) return angles.convergenceDeg;
  return angles.mineGridRotationDeg === undefined
    ? undefined
    : angles.convergenceDeg + angles.mineGridRotationDeg;
}

/** How far azimuths of one north are above those of another along the same line, or undefined when not known. */
export function stepBetween(from: North, to: North, angles: NorthAngles): number | undefined {
  if (from === to) return 0;
  const rotation = angles.mineGridRotationDeg;
  if (from === 'mine-grid' && to === 'grid') return rotation;
  if (from === 'grid' && to === 'mine-grid') return rotation === undefined ? undefined : -rotation;
  const fromTrue = northFromTrue(from, angles);
  const toTrue = northFromTrue(to, angles);
  return fromTrue === undefined || toTrue === undefined ? undefined : fromTrue - toTrue;
}

/**
 * The same line counted from another north: true = magnetic + declination, grid = true − convergence, mine grid = grid −
 * rotation. Undefined when an angle it needs isn't known. `epoch` is the decimal year of a magnetic result.
 */
export function toNorth(a: Azimuth, north: North, angles: NorthAngles, epoch?: number): Azimuth | undefined {
  if (a.north === north) return a;
  const step = stepBetween(a.north, north, angles);
  if (step === undefined) return undefined;
  return azimuth(a.deg + step, north, north === 'magnetic' ? epoch : undefined);
}

/** An azimuth in every north that the known angles reach, in the order true, magnetic, grid, mine grid. */
export function inEveryNorth(a: Azimuth, angles: NorthAngles, epoch?: number): readonly Azimuth[] {
  return (['true', 'magnetic', 'grid', 'mine-grid'] as const).flatMap(
    (north) => toNorth(a, north, angles, epoch) ?? [],
  );
}

/** `1.58° west`: an angle with its side in words, two decimals, so that no sign convention has to be guessed. */
export function formatEastWest(deg: number): string {
  const shown = Math.abs(deg).toFixed(2);
  if (Number(shown) === 0) return '0.00°';
  return `${shown}° ${deg < 0 ? 'west' : 'east'}`;
}

/** The declination with its convention in words. */
export function formatDeclination(deg: number): string {
  return `declination ${formatEastWest(deg)} (magnetic north from true north; true = magnetic + declination, east positive)`;
}

/** The convergence with its convention in words: manuals differ in its sign. */
export function formatConvergence(deg: number): string {
  return `convergence ${formatEastWest(deg)} (grid north from true north; grid = true - convergence, east positive)`;
}
