import type { Collar } from '../../hole/header.ts';
import { metres } from '../../quantity/depth.ts';
import { type MineGrid, mapToMine } from '../norths/mine-grid.ts';
import type { PathPoint } from './path.ts';

/** Columns of the positions by metre, the unit in each name. */
export const POSITION_COLUMNS = [
  'depth_m',
  'east_m',
  'north_m',
  'elevation_m',
  'azimuth_deg',
  'azimuth_north',
  'dip_deg',
  'basis',
] as const;

/** Columns added where the project has a mine grid. */
export const MINE_COLUMNS = ['mine_east_m', 'mine_north_m'] as const;

/**
 * Positions by metre as cells, numbers as numbers, one row a point: on the grid of the collar, or from the collar itself (0, 0, 0) where it
 * has no position; on the mine grid beside it, where there is one. Metres of the ground are laid on the grid as they are: the grid's
 * scale, under half a metre in a kilometre, is not applied. The basis of each says what is surveyed and what projected.
 */
export function positionRows(
  points: readonly PathPoint[],
  collar: Collar | undefined,
  mineGrid?: MineGrid,
): readonly (readonly (string | number)[])[] {
  const east = metres(collar?.eastingMm ?? 0);
  const north = metres(collar?.northingMm ?? 0);
  const elevation = metres(collar?.elevationMm ?? 0);
  return points.map((point) => {
    const at = { eastM: east + point.offset.east, northM: north + point.offset.north };
    const mine = mineGrid === undefined || collar === undefined ? undefined : mapToMine(mineGrid, at);
    return [
      metres(point.depthMm),
      millimetre(at.eastM),
      millimetre(at.northM),
      millimetre(elevation - point.offset.down),
      (Math.round(point.azimuth.deg * 100) % 36_000) / 100,
      point.azimuth.north,
      Number(point.dip.toFixed(2)),
      point.basis,
      ...(mine === undefined ? [] : [millimetre(mine.eastM), millimetre(mine.northM)]),
    ];
  });
}

const millimetre = (m: number): number => Math.round(m * 1000) / 1000 + 0;
