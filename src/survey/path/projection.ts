import { type Depth, depthFromMm, metres } from '../../quantity/depth.ts';
import { directionOf } from '../direction.ts';
import { type Arc, alongArc, arcBetween, goingOn } from './minimum-curvature.ts';
import { lastStation, type Path, type PathPoint, pointOnLeg, type Station, surveyedPoint } from './path.ts';
import { plus } from './vector.ts';

/** How the hole is carried on below its last station: straight, or bending on as it has of late. */
export type Projection = 'straight' | 'trend';

/** The trend is read over at least this length above the last station where there is one, metres: one leg alone is mostly noise. */
export const TREND_LENGTH_M = 60;

/** The point of the hole at a depth from the collar down; below the last station by `projection`, and marked so. */
export function pointAt(path: Path, depthMm: Depth, projection: Projection = 'straight'): PathPoint {
  if (depthMm < 0) throw new RangeError(`a hole has no point at ${depthMm} mm, above its collar`);
  return surveyedPoint(path, depthMm) ?? pointBelow(path, depthMm, projection);
}

/** The station the trend is read from: the deepest at least {@link TREND_LENGTH_M} above the last, else the first. */
function trendStart(path: Path): Station {
  const last = lastStation(path);
  return (
    path.stations.findLast((one) => metres(last.depthMm - one.depthMm) >= TREND_LENGTH_M) ?? path.stations[0]
  );
}

/**
 * The hole carried on `lengthM` metres below its last station: straight, or bending on round the circle that joins its last
 * {@link TREND_LENGTH_M} or so (straight where only one station is known).
 */
export function arcBelow(path: Path, projection: Projection, lengthM: number): Arc {
  const last = lastStation(path);
  const from = projection === 'trend' ? trendStart(path) : last;
  const trendM = metres(last.depthMm - from.depthMm);
  return trendM === 0 ? arcBetween(last, last, lengthM) : goingOn(arcBetween(from, last, trendM), lengthM);
}

function pointBelow(path: Path, depthMm: Depth, projection: Projection): PathPoint {
  const reachM = metres(depthMm - lastStation(path).depthMm);
  const beyond = alongArc(arcBelow(path, projection, reachM), reachM);
  const { azimuth, dip } = lastStation(path);
  return {
    depthMm,
    offset: plus(path.end, beyond.offset),
    ...(projection === 'straight'
      ? { azimuth, dip, basis: 'projected straight' }
      : { ...directionOf(beyond.tangent, path.north, azimuth.epoch), basis: 'projected on the trend' }),
  };
}

/**
 * Points each `stepMm` (a metre) from the collar to `toMm`, and one at `toMm` itself. Points below the last station are
 * projected and marked so.
 */
export function pathByMetre(
  path: Path,
  toMm: Depth,
  projection: Projection = 'straight',
  stepMm = 1000,
): readonly PathPoint[] {
  if (!(stepMm > 0)) throw new RangeError(`a step must be more than 0 mm, got ${stepMm}`);
  const points: PathPoint[] = [];
  const deepest = lastStation(path).depthMm;
  let leg = 0;
  for (let at = 0; ; at = Math.min(at + stepMm, toMm)) {
    const depthMm = depthFromMm(at);
    while (leg < path.legs.length && at > path.legs[leg]!.to.depthMm) leg++;
    const current = path.legs[leg];
    points.push(
      at === 0 || at > deepest || current === undefined
        ? pointAt(path, depthMm, projection)
        : pointOnLeg(current, depthMm, path.north),
    );
    if (at >= toMm) return points;
  }
}
