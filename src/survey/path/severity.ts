import { degreesBetween } from '../../quantity/azimuth.ts';
import { angleBetweenDeg, type Direction, radians } from '../direction.ts';

/** The length over which bends are told, metres. */
export const BEND_LENGTH_M = 30;

/** How a hole bends between two stations, each in degrees per 30 m. */
export interface Bend {
  /** The angle in space: dogleg severity. */
  readonly severity: number;
  /** Change of dip, positive where the hole becomes shallower. */
  readonly lift: number;
  /** Change of azimuth, positive to the right; wild where the hole is near vertical. */
  readonly turn: number;
  /** The turn × cos(mean dip): the part of it that moves the hole sideways. */
  readonly turnAcross: number;
}

/** The bend from one direction to another over `lengthM` metres, which must be more than 0. Both of one north. */
export function bendBetween(from: Direction, to: Direction, lengthM: number): Bend {
  if (!(lengthM > 0)) throw new RangeError(`a bend needs a length of more than 0 m, got ${lengthM}`);
  const per30 = BEND_LENGTH_M / lengthM;
  const turn = degreesBetween(to.azimuth.deg, from.azimuth.deg) * per30;
  return {
    severity: angleBetweenDeg(from, to) * per30,
    lift: (to.dip - from.dip) * per30,
    turn,
    turnAcross: turn * Math.cos(radians((from.dip + to.dip) / 2)),
  };
}
