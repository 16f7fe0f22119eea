import type { Collar } from '../hole/header.ts';
import { formatDepth, metres } from '../quantity/depth.ts';
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

/**
 * Positions by metre as cells of text, one row a point: on the grid of the collar, or from the collar itself (0, 0, 0) where it has
 * no position. Metres of the ground are laid on the grid as they are: the grid's scale, under half a metre in a kilometre, is not
 * applied. The basis of each says what is surveyed and what projected.
 */
export function positionRows(
  points: readonly PathPoint[],
  collar: Collar | undefined,
): readonly (readonly string[])[] {
  const east = metres(collar?.eastingMm ?? 0);
  const north = metres(collar?.northingMm ?? 0);
  const elevation = metres(collar?.elevationMm ?? 0);
  return points.map((point) => [
    formatDepth(point.depthMm),
    (east + point.offset.east).toFixed(3),
    (north + point.offset.north).toFixed(3),
    (elevation - point.offset.down).toFixed(3),
    ((Math.round(point.azimuth.deg * 100) % 36_000) / 100).toFixed(2),
    point.azimuth.north,
    point.dip.toFixed(2),
    point.basis,
  ]);
}
