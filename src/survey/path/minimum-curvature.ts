import { angleBetweenRad, type Direction, tangentOf } from '../direction.ts';
import { dot, length, minus, ORIGIN, plus, times, unit, type Vector } from './vector.ts';

/**
 * The circular arc that minimum curvature lays between two stations: the directions at both ends as unit vectors, the
 * angle between them, the length along it, and the unit vector towards the centre at the start (zero where straight).
 * Taylor & Mason 1972; Zaremba 1973; API Bulletin D20.
 */
export interface Arc {
  readonly start: Vector;
  readonly end: Vector;
  readonly inward: Vector;
  readonly betaRad: number;
  readonly lengthM: number;
}

/** A position along an arc, from its start, and the direction of the hole there. */
export interface OnArc {
  readonly offset: Vector;
  readonly tangent: Vector;
}

/** Below this angle the series is used: its next term, 17β⁶/20160, is then under 10⁻²¹. */
const SMALL_RAD = 1e-3;

/** (2/β) tan(β/2), the factor that turns the balanced chord into the arc; β in radians, 0 ≤ β < π. */
export function ratioFactor(betaRad: number): number {
  const squared = betaRad * betaRad;
  return betaRad < SMALL_RAD
    ? 1 + squared / 12 + (squared * squared) / 120
    : (2 / betaRad) * Math.tan(betaRad / 2);
}

/** The arc from one direction to another over `lengthM` metres. The two may not be opposite: no single arc joins them. */
export function arcBetween(from: Direction, to: Direction, lengthM: number): Arc {
  const start = tangentOf(from);
  const end = tangentOf(to);
  return {
    start,
    end,
    inward: inwardOf(start, end),
    betaRad: angleBetweenRad(from, to),
    lengthM,
  };
}

function inwardOf(start: Vector, end: Vector): Vector {
  const bend = minus(end, start);
  if (length(bend) === 0) return ORIGIN;
  return unit(minus(bend, times(start, dot(bend, start))));
}

/** The displacement from start to end: L/2 (t₁ + t₂) RF. */
export function displacement(arc: Arc): Vector {
  return times(plus(arc.start, arc.end), (arc.lengthM / 2) * ratioFactor(arc.betaRad));
}

/**
 * Where the arc is `distanceM` from its start, on the arc and not on its chord. A distance past the end goes on round the
 * same circle, and a negative one goes back round it.
 */
export function alongArc(arc: Arc, distanceM: number): OnArc {
  if (arc.betaRad === 0 || arc.lengthM === 0)
    return { offset: times(arc.start, distanceM), tangent: arc.start };
  const radius = arc.lengthM / arc.betaRad;
  const theta = distanceM / radius;
  const sine = Math.sin(theta);
  const cosine = Math.cos(theta);
  const half = Math.sin(theta / 2);
  const ahead = radius * sine;
  const inwards = 2 * radius * half * half;
  const { start, inward } = arc;
  return {
    offset: {
      north: ahead * start.north + inwards * inward.north,
      east: ahead * start.east + inwards * inward.east,
      down: ahead * start.down + inwards * inward.down,
    },
    tangent: {
      north: cosine * start.north + sine * inward.north,
      east: cosine * start.east + sine * inward.east,
      down: cosine * start.down + sine * inward.down,
    },
  };
}

/** The arc of `lengthM` that goes on round the same circle from where another ends. */
export function goingOn(arc: Arc, lengthM: number): Arc {
  const turned = turnedBy(arc, arc.betaRad);
  const betaRad = arc.lengthM === 0 ? 0 : (arc.betaRad * lengthM) / arc.lengthM;
  const onward = { ...turned, betaRad, lengthM, end: turned.start };
  return { ...onward, end: alongArc(onward, lengthM).tangent };
}

function turnedBy({ start, inward }: Arc, theta: number): Pick<Arc, 'start' | 'inward'> {
  const sine = Math.sin(theta);
  const cosine = Math.cos(theta);
  return {
    start: plus(times(start, cosine), times(inward, sine)),
    inward: minus(times(inward, cosine), times(start, sine)),
  };
}

/** How far along an arc, 0 to its length in metres, it comes nearest to a point given from its start. */
export function nearestAlong(arc: Arc, point: Vector): number {
  const ahead = dot(point, arc.start);
  if (arc.betaRad === 0 || arc.lengthM === 0) return Math.min(arc.lengthM, Math.max(0, ahead));
  const radius = arc.lengthM / arc.betaRad;
  const theta = Math.atan2(ahead, radius - dot(point, arc.inward));
  if (theta >= 0 && theta <= arc.betaRad) return theta * radius;
  const toStart = length(point);
  const toEnd = length(minus(point, displacement(arc)));
  return toStart <= toEnd ? 0 : arc.lengthM;
}
