import { COLLAR_RANKS, type Collar } from '../../hole/header.ts';
import { metres } from '../../quantity/depth.ts';
import { instantMs } from '../../quantity/stamp.ts';
import type { MapPosition } from '../norths/grids.ts';
import type { Vector } from '../path/vector.ts';

/** Collars from the best rank down, the one recorded last first among equals. */
export function collarsByRank(collars: readonly Collar[]): readonly Collar[] {
  const rank = (one: Collar) => COLLAR_RANKS.indexOf(one.rank);
  return [...collars].sort((a, b) => rank(b) - rank(a) || instantMs(b.at) - instantMs(a.at));
}

/** The collar to use: of the best rank there is, the one recorded last. Undefined where none is recorded. */
export function bestCollar(collars: readonly Collar[]): Collar | undefined {
  return collarsByRank(collars)[0];
}

/** The collar that the program planned, the last one recorded. */
export function plannedCollar(collars: readonly Collar[]): Collar | undefined {
  return bestCollar(collars.filter((one) => one.rank === 'planned'));
}

/** A collar as metres of its grid. */
export function positionOf(collar: Collar): MapPosition {
  return { eastM: metres(collar.eastingMm), northM: metres(collar.northingMm) };
}

/** Metres from one collar to another of the same grid. */
export function fromCollarTo(from: Collar, to: Collar): Vector {
  return {
    north: metres(to.northingMm - from.northingMm),
    east: metres(to.eastingMm - from.eastingMm),
    down: metres(from.elevationMm - to.elevationMm),
  };
}
