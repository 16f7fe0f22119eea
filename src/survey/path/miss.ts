import { type Depth, depthFromMetres, depthFromMm, metres } from '../../quantity/depth.ts';
import { type Direction, degrees, radians, tangentOf } from '../direction.ts';
import { alongArc, nearestAlong } from './minimum-curvature.ts';
import { lastStation, type Path, type PathPoint } from './path.ts';
import { arcBelow, type Projection, pointAt } from './projection.ts';
import { BEND_LENGTH_M } from './severity.ts';
import { dot, length, minus, plus, times, type Vector } from './vector.ts';

/**
 * A hole as planned: one direction (in the path's north) from the planned collar, and the depth of its target along it. `from` is
 * the planned collar from the collar as drilled, metres; the origin where the hole is on its peg.
 */
export interface PlannedLine {
  readonly direction: Direction;
  readonly targetMm: Depth;
  readonly from: Vector;
}

/** A distance from the plan, split: metres beyond (+) or short of it along its section, right (+) or left of it, below (+) or above. */
export interface SplitMiss {
  readonly alongM: number;
  readonly acrossM: number;
  readonly belowM: number;
  readonly totalM: number;
}

/** Where the plan is at a depth along it, from the collar as drilled. */
export function plannedPoint(plan: PlannedLine, depthMm: number): Vector {
  return plus(plan.from, times(tangentOf(plan.direction), metres(depthMm)));
}

/** Distance of a point from the planned line, square to it, metres. */
export function distanceFromPlan(plan: PlannedLine, point: Pick<PathPoint, 'offset'>): number {
  const tangent = tangentOf(plan.direction);
  const away = minus(point.offset, plan.from);
  return length(minus(away, times(tangent, dot(away, tangent))));
}

/** A displacement split by the vertical section of the plan. */
function splitBySection(plan: PlannedLine, away: Vector): SplitMiss {
  const bearing = radians(plan.direction.azimuth.deg);
  const ahead = { north: Math.cos(bearing), east: Math.sin(bearing), down: 0 };
  const right = { north: -Math.sin(bearing), east: Math.cos(bearing), down: 0 };
  return {
    alongM: dot(away, ahead),
    acrossM: dot(away, right),
    belowM: away.down,
    totalM: length(away),
  };
}

/** The miss when the hole has gone as far along itself as the target is along the plan. */
export function missAtTarget(path: Path, plan: PlannedLine, projection: Projection): SplitMiss {
  const there = pointAt(path, plan.targetMm, projection).offset;
  return splitBySection(plan, minus(there, plannedPoint(plan, plan.targetMm)));
}

/** Where the hole comes nearest to its target. */
export interface ClosestApproach {
  readonly depthMm: Depth;
  readonly distanceM: number;
  readonly miss: SplitMiss;
  readonly projected: boolean;
}

/** How much further than the target's own depth a projection is followed to find the nearest point. */
const FOLLOWED = 1.5;

/**
 * The nearest the hole comes to its target: exact on each arc, and below the last station along the projection, as far as half as
 * deep again as the target.
 */
export function closestApproach(path: Path, plan: PlannedLine, projection: Projection): ClosestApproach {
  const target = plannedPoint(plan, plan.targetMm);
  const deepest = lastStation(path).depthMm;
  const belowM = Math.max(0, metres(plan.targetMm) * FOLLOWED - metres(deepest));
  const pieces = [
    ...path.legs.map((leg) => ({ fromMm: leg.from.depthMm, start: leg.start, arc: leg.arc })),
    { fromMm: deepest, start: path.end, arc: arcBelow(path, projection, belowM) },
  ];
  const nearest = pieces.map(({ fromMm, start, arc }) => {
    const alongM = nearestAlong(arc, minus(target, start));
    const offset = plus(start, alongArc(arc, alongM).offset);
    return { depthMm: fromMm + depthFromMetres(alongM), away: minus(offset, target) };
  });
  const best = nearest.reduce((a, b) => (length(b.away) < length(a.away) ? b : a));
  return {
    depthMm: depthFromMm(best.depthMm),
    distanceM: length(best.away),
    miss: splitBySection(plan, best.away),
    projected: best.depthMm > deepest,
  };
}

/** What it would take to bring the hole through its target from where it is now. */
export interface Reach {
  /** Degrees per 30 m of the gentlest steady bend from the foot of the hole to within the radius; Infinity when it lies behind. */
  readonly severityPer30m: number;
  /** Whether that is within the limit, or the hole passed the target within the radius. */
  readonly within: boolean;
  /** Metres along the hole to get there by that bend; undefined when it lies behind. */
  readonly lengthM: number | undefined;
  /** Where the target lies behind: how near the hole passed it, metres. */
  readonly passedM?: number;
}

/**
 * Whether the target can still be passed within `radiusM`, bending no more than `limitPer30m`. The gentlest single arc that
 * leaves the last station in its direction and passes through a point at chord d and angle α has radius |d| / (2 sin α).
 */
export function reachOf(path: Path, plan: PlannedLine, limitPer30m: number, radiusM: number): Reach {
  const chord = minus(plannedPoint(plan, plan.targetMm), path.end);
  const distance = length(chord);
  if (distance <= radiusM) return { severityPer30m: 0, within: true, lengthM: 0 };
  const tangent = tangentOf(lastStation(path));
  const ahead = dot(chord, tangent);
  const angle = Math.atan2(length(minus(chord, times(tangent, ahead))), ahead);
  const needed = Math.max(0, angle - Math.asin(Math.min(1, radiusM / distance)));
  if (needed >= Math.PI / 2) {
    const passedM = closestApproach(path, plan, 'straight').distanceM;
    return {
      severityPer30m: Number.POSITIVE_INFINITY,
      within: passedM <= radiusM,
      lengthM: undefined,
      passedM,
    };
  }
  const severityPer30m = degrees((BEND_LENGTH_M * 2 * Math.sin(needed)) / distance);
  return {
    severityPer30m,
    within: severityPer30m <= limitPer30m,
    lengthM: needed === 0 ? distance : (distance * needed) / Math.sin(needed),
  };
}
