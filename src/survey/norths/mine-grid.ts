import { ok, type Result, refused } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { radians } from '../direction.ts';
import { mineGridUnsound } from '../findings.ts';
import { bearingAndDistance, type MapPosition } from './grids.ts';

/**
 * A local grid laid on the map grid: the point that is `mineOrigin` in the mine grid is `mapOrigin` in the map grid, mine north
 * bears `rotationDeg` clockwise from map north, and a metre of the mine grid is `scale` metres of the map grid.
 */
export interface MineGrid {
  readonly mapOrigin: MapPosition;
  readonly mineOrigin: MapPosition;
  readonly rotationDeg: number;
  readonly scale: number;
}

/** One peg in both grids. */
export interface CommonPoint {
  readonly map: MapPosition;
  readonly mine: MapPosition;
}

/** Scale further from 1 than this is not a scale of a grid, but a wrong peg. */
const SCALE_LIMIT = 0.01;
/** Pegs nearer than this turn a survey error of centimetres into a turned grid, metres. */
const NEAR_M = 50;

/** The mine grid that two common points define; refused when they lie too near each other or don't agree in length. */
export function mineGridFromPoints(a: CommonPoint, b: CommonPoint, place: Place): Result<MineGrid> {
  const onMap = bearingAndDistance(a.map, b.map);
  const inMine = bearingAndDistance(a.mine, b.mine);
  if (Math.min(onMap.metres, inMine.metres) < NEAR_M)
    return refused(
      mineGridUnsound.at(place, {
        problem: `the two common points are less than ${NEAR_M} m apart`,
        remedy: 'Use two pegs as far apart as the site allows.',
      }),
    );
  const scale = onMap.metres / inMine.metres;
  if (Math.abs(scale - 1) > SCALE_LIMIT)
    return refused(
      mineGridUnsound.at(place, {
        problem: `the two points are ${onMap.metres.toFixed(2)} m apart on the map grid and ${inMine.metres.toFixed(2)} m in the mine grid`,
        remedy: 'Check both pegs in both grids: one is likely wrong, or east and north are swapped.',
      }),
    );
  const turned = (onMap.deg - inMine.deg + 540) % 360;
  return ok({ mapOrigin: a.map, mineOrigin: a.mine, rotationDeg: turned - 180, scale });
}

/** A position of the mine grid, on the map grid. */
export function mineToMap(grid: MineGrid, at: MapPosition): MapPosition {
  const east = at.eastM - grid.mineOrigin.eastM;
  const north = at.northM - grid.mineOrigin.northM;
  const sine = Math.sin(radians(grid.rotationDeg)) * grid.scale;
  const cosine = Math.cos(radians(grid.rotationDeg)) * grid.scale;
  return {
    eastM: grid.mapOrigin.eastM + east * cosine + north * sine,
    northM: grid.mapOrigin.northM - east * sine + north * cosine,
  };
}

/** A position of the map grid, in the mine grid. */
export function mapToMine(grid: MineGrid, at: MapPosition): MapPosition {
  const east = at.eastM - grid.mapOrigin.eastM;
  const north = at.northM - grid.mapOrigin.northM;
  const sine = Math.sin(radians(grid.rotationDeg)) / grid.scale;
  const cosine = Math.cos(radians(grid.rotationDeg)) / grid.scale;
  return {
    eastM: grid.mineOrigin.eastM + east * cosine - north * sine,
    northM: grid.mineOrigin.northM + east * sine + north * cosine,
  };
}
