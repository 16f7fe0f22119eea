import { ok, type Result, refused } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { North } from '../../quantity/azimuth.ts';
import { type Depth, depthFromMm, formatDepth, metres } from '../../quantity/depth.ts';
import { type Direction, degrees, directionOf } from '../direction.ts';
import { stationsUnusable } from '../findings.ts';
import { type Arc, alongArc, arcBetween, displacement } from './minimum-curvature.ts';
import { ORIGIN, plus, type Vector } from './vector.ts';

/**
 * How a direction in the path is known: set at the collar, measured by a shot, its dip alone measured (the azimuth taken from the
 * stations about it), or assumed for want of a line-up.
 */
type StationBasis = 'set' | 'measured' | 'dip measured' | 'assumed';

/** A direction known at a depth. */
export interface Station extends Direction {
  readonly depthMm: Depth;
  readonly basis: StationBasis;
}

/** From one station to the next, and where it starts, from the collar in metres. */
export interface Leg {
  readonly from: Station;
  readonly to: Station;
  readonly start: Vector;
  readonly arc: Arc;
}

/** Where a hole goes, from its collar down to its last station; azimuths are counted from `north`. */
export interface Path {
  readonly north: North;
  readonly stations: readonly [Station, ...Station[]];
  readonly legs: readonly Leg[];
  /** The last station's position, from the collar. */
  readonly end: Vector;
}

/** How a point is known: at a station, on the arc between two, or below the last by one of the projections. */
type PointBasis = StationBasis | 'on the arc' | 'projected straight' | 'projected on the trend';

/** A point of the hole: depth along it, offset from the collar in metres, direction there, and how it is known. */
export interface PathPoint extends Direction {
  readonly depthMm: Depth;
  readonly offset: Vector;
  readonly basis: PointBasis;
}

/** Two stations this close to opposite have no single arc between them, degrees. */
const OPPOSITE_DEG = 179.9;

/**
 * The path through stations in order of depth, all of one north. Without one at the collar (the line-up), the hole is
 * taken straight from the collar to its first station, which is marked as assumed. Refused when there is no station,
 * depths don't increase, norths are mixed, or two neighbours point opposite ways.
 */
export function pathThrough(stations: readonly Station[], place: Place): Result<Path> {
  const first = stations[0];
  if (first === undefined)
    return refused(
      stationsUnusable.at(place, {
        problem: 'no direction is known',
        remedy: 'Record the line-up or a shot.',
      }),
    );
  const all: [Station, ...Station[]] =
    first.depthMm === 0
      ? [first, ...stations.slice(1)]
      : [{ ...first, depthMm: depthFromMm(0), basis: 'assumed' }, ...stations];
  const legs: Leg[] = [];
  let start = ORIGIN;
  for (let index = 1; index < all.length; index++) {
    const leg = legBetween(all[index - 1]!, all[index]!, start, place);
    if (!leg.ok) return leg;
    legs.push(leg.value);
    start = plus(start, displacement(leg.value.arc));
  }
  return ok({ north: first.azimuth.north, stations: all, legs, end: start });
}

function legBetween(from: Station, to: Station, start: Vector, place: Place): Result<Leg> {
  const at = { ...place, fromMm: from.depthMm, toMm: to.depthMm };
  if (to.depthMm <= from.depthMm)
    return refused(
      stationsUnusable.at(at, {
        problem: `the station at ${formatDepth(to.depthMm)} m is not below the one before it`,
        remedy: 'Correct the depth, or reject one of the two shots.',
      }),
    );
  if (to.azimuth.north !== from.azimuth.north)
    return refused(
      stationsUnusable.at(at, {
        problem: `azimuths of ${from.azimuth.north} and ${to.azimuth.north} north are mixed`,
        remedy: 'Turn every azimuth to one north first.',
      }),
    );
  const arc = arcBetween(from, to, metres(to.depthMm - from.depthMm));
  if (degrees(arc.betaRad) >= OPPOSITE_DEG)
    return refused(
      stationsUnusable.at(at, {
        problem: 'two neighbouring stations point opposite ways',
        remedy: 'Check the dip and the azimuth of both; reject the wrong one.',
      }),
    );
  return ok({ from, to, start, arc });
}

/** The last station of a path. */
export function lastStation(path: Path): Station {
  return path.stations[path.stations.length - 1]!;
}

/** The first leg whose foot is at or below a depth, or undefined below the last station. */
function legAt(path: Path, depthMm: number): Leg | undefined {
  return path.legs.find((leg) => depthMm <= leg.to.depthMm);
}

/** The point of the path at a depth in its surveyed part, on the arc; undefined above the collar and below the last station. */
export function surveyedPoint(path: Path, depthMm: Depth): PathPoint | undefined {
  if (depthMm < 0 || depthMm > lastStation(path).depthMm) return undefined;
  if (depthMm === 0) return { ...stationPoint(path.stations[0], ORIGIN) };
  const leg = legAt(path, depthMm);
  return leg === undefined ? undefined : pointOnLeg(leg, depthMm, path.north);
}

/** The point at a depth of a leg. */
export function pointOnLeg(leg: Leg, depthMm: Depth, north: North): PathPoint {
  if (depthMm === leg.to.depthMm) return stationPoint(leg.to, plus(leg.start, displacement(leg.arc)));
  const { offset, tangent } = alongArc(leg.arc, metres(depthMm - leg.from.depthMm));
  const { azimuth, dip } = directionOf(tangent, north, leg.from.azimuth.epoch);
  return { depthMm, azimuth, dip, offset: plus(leg.start, offset), basis: 'on the arc' };
}

function stationPoint(station: Station, offset: Vector): PathPoint {
  const { depthMm, azimuth, dip, basis } = station;
  return { depthMm, azimuth, dip, offset, basis };
}
