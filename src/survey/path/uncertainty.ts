import { azimuth } from '../../quantity/azimuth.ts';
import { type Depth, depthFromMm } from '../../quantity/depth.ts';
import { dip } from '../../quantity/dip.ts';
import { USUAL_BEND } from '../blunders/bends.ts';
import { WANDER_PER_30_M } from '../blunders/evidence.ts';
import { type Direction, radians, tangentOf } from '../direction.ts';
import type { ErrorClass, ToolErrors } from '../settings.ts';
import type { AzimuthShare, RankedStation } from '../shots/runs.ts';
import { closestApproach, type PlannedLine, plannedPoint } from './miss.ts';
import { type Path, pathThrough } from './path.ts';
import { type Ellipse, ellipseOf, type PlaneCovariance, probabilityWithin } from './probability.ts';
import { type Projection, pointAt, TREND_LENGTH_M } from './projection.ts';
import { BEND_LENGTH_M } from './severity.ts';
import { cross, dot, minus, times, unit, type Vector } from './vector.ts';

/** One error: a small change of some stations, in steps of one sigma. */
type Disturbance = (stations: readonly RankedStation[]) => readonly RankedStation[];

/** How well the position of a hole is known at a depth. */
export interface Uncertainty {
  /** One-sigma ellipse square to the hole there: its angle is counted from "up" towards "right", looking down the hole. */
  readonly ellipse: Ellipse;
  /** One sigma along the hole, metres. */
  readonly alongM: number;
  /** Spread square to the hole, x up and y right. */
  readonly spread: PlaneCovariance;
}

/** Directions square to a hole: up (away from the centre of the Earth, north where it is vertical) and right, looking down it. */
export interface SquareFrame {
  readonly down: Vector;
  readonly up: Vector;
  readonly right: Vector;
}

/** The frame square to a direction. */
export function squareFrame(direction: Direction): SquareFrame {
  const down = tangentOf(direction);
  const right = tangentOf({
    azimuth: azimuth(direction.azimuth.deg + 90, direction.azimuth.north),
    dip: dip(0),
  });
  return { down, right, up: unit(cross(right, down)) };
}

/** A direction changed by degrees of azimuth and of dip; one pushed past vertical comes up on the other side. */
export function disturbed(direction: Direction, azimuthDeg: number, dipDeg: number): Direction {
  const raw = direction.dip + dipDeg;
  const over = raw < -90 || raw > 90;
  const folded = raw < -90 ? -180 - raw : raw > 90 ? 180 - raw : raw;
  return {
    azimuth: azimuth(direction.azimuth.deg + azimuthDeg + (over ? 180 : 0), direction.azimuth.north),
    dip: dip(folded),
  };
}

/** Every station turned by as much azimuth and dip as an error makes of it, degrees. */
function turned(
  azimuthDeg: (one: RankedStation) => number,
  dipDeg: (one: RankedStation) => number,
): Disturbance {
  return (stations) =>
    stations.map((one) => {
      const turn = azimuthDeg(one);
      const lift = dipDeg(one);
      return turn === 0 && lift === 0 ? one : { ...one, ...disturbed(one, turn, lift) };
    });
}

const NOTHING = () => 0;

/** The readings that a station's azimuth comes from: its own, or those about it where it was not measured. */
function azimuthSharesOf(station: RankedStation): readonly AzimuthShare[] {
  const { toolClass, run, depthMm, azimuthFrom } = station;
  return azimuthFrom ?? [{ toolClass, run, depthMm, share: 1 }];
}

/** How much of a station's azimuth comes from readings of a kind, 0 to 1. */
function shareFrom(station: RankedStation, which: (share: AzimuthShare) => boolean): number {
  return azimuthSharesOf(station)
    .filter(which)
    .reduce((sum, { share }) => sum + share, 0);
}

/** Readings whose azimuth hangs on the line-up: its own, and those of a gyro that was aligned to it. */
const inheritsLineUp = ({ toolClass }: AzimuthShare) =>
  toolClass === 'line-up' || toolClass === 'gyro aligned at the collar';

/**
 * Every independent error of a hole's stations, each as what one sigma of it does: per reading a random error of azimuth and
 * of dip; per run a systematic one of each; the line-up's own, which a gyro aligned at the collar inherits in azimuth. An azimuth
 * that was not measured has no error of its own: it inherits, in the same shares, those of the readings it was taken from.
 */
function disturbances(
  stations: readonly RankedStation[],
  errors: Readonly<Record<ErrorClass, ToolErrors>>,
): readonly Disturbance[] {
  const made: Disturbance[] = [];
  const readings = new Map(
    stations.flatMap(azimuthSharesOf).map((each) => [`${each.run} ${each.depthMm}`, each]),
  );
  for (const { run, depthMm, toolClass } of readings.values()) {
    const same = (share: AzimuthShare) => share.run === run && share.depthMm === depthMm;
    made.push(turned((one) => shareFrom(one, same) * errors[toolClass].azimuthRandomDeg, NOTHING));
  }
  for (const here of stations)
    made.push(
      turned(NOTHING, (one) => (one.depthMm === here.depthMm ? errors[here.toolClass].dipRandomDeg : 0)),
    );
  for (const { run, toolClass } of new Map([...readings.values()].map((each) => [each.run, each])).values())
    if (run !== undefined)
      made.push(
        turned(
          (one) => shareFrom(one, (share) => share.run === run) * errors[toolClass].azimuthSystematicDeg,
          NOTHING,
        ),
      );
  for (const { run, toolClass } of new Map(stations.map((each) => [each.run, each])).values())
    made.push(turned(NOTHING, (one) => (one.run === run ? errors[toolClass].dipSystematicDeg : 0)));
  made.push(
    turned((one) => shareFrom(one, inheritsLineUp) * errors['line-up'].azimuthSystematicDeg, NOTHING),
  );
  return made;
}

/** The path through stations that are known to have one. */
function pathOf(stations: readonly RankedStation[]): Path {
  const path = pathThrough(stations, {});
  if (!path.ok) throw new RangeError(path.findings[0]?.problem ?? 'no path');
  return path.value;
}

/**
 * The uncertainty of the position at a depth, to first order: each error moves the position by what one sigma of it does, and
 * independent errors add as squares. Depth errors act along the hole: random ones of the last station, and a % of the depth.
 * How a hole strays by itself is added: a little between shots, more below the last dip and below the last azimuth that was measured, where it
 * bends and wanders as no one saw. Stations as `bestStations` makes them, at least one (throws otherwise).
 */
export function uncertaintyAt(
  stations: readonly RankedStation[],
  depthMm: Depth,
  errors: Readonly<Record<ErrorClass, ToolErrors>>,
  projection: Projection,
): Uncertainty {
  const here = pointAt(pathOf(stations), depthMm, projection);
  const frame = squareFrame(here);
  let spread: PlaneCovariance = { xx: 0, xy: 0, yy: 0 };
  let alongSquared = 0;
  for (const disturb of disturbances(stations, errors)) {
    // Two stations all but opposite may have no arc between them once disturbed; that says nothing about the others.
    const path = pathThrough(disturb(stations), {});
    if (!path.ok) continue;
    const away = minus(pointAt(path.value, depthMm, projection).offset, here.offset);
    const x = dot(away, frame.up);
    const y = dot(away, frame.right);
    spread = { xx: spread.xx + x * x, xy: spread.xy + x * y, yy: spread.yy + y * y };
    alongSquared += dot(away, frame.down) ** 2;
  }
  const wander = ownWander(stations, depthMm, projection);
  spread = { ...spread, xx: spread.xx + wander.liftM ** 2, yy: spread.yy + wander.turnM ** 2 };
  const own = errors[(stations.findLast((one) => one.depthMm <= depthMm) ?? stations[0]!).toolClass];
  const scaled = (own.depthSystematicPerCent / 100) * (depthMm / 1000);
  return {
    ellipse: ellipseOf(spread),
    alongM: Math.sqrt(alongSquared + own.depthRandomM ** 2 + scaled ** 2),
    spread,
  };
}

/** How far a hole strays by itself where no one measured it, one sigma up or down and to the sides, metres. */
function ownWander(
  stations: readonly RankedStation[],
  depthMm: Depth,
  projection: Projection,
): { readonly liftM: number; readonly turnM: number } {
  const dips = stations.filter((one) => one.basis !== 'set').map((one) => one.depthMm);
  const azimuths = measuredAzimuthsMm(stations);
  return {
    liftM: straysTo(dips, depthMm, USUAL_BEND.lift, projection),
    turnM: straysTo(azimuths, depthMm, USUAL_BEND.turn, projection),
  };
}

/** Depths at which an azimuth was measured, those of readings that another station took its own from among them. */
function measuredAzimuthsMm(stations: readonly RankedStation[]): readonly number[] {
  const readings = stations.flatMap(azimuthSharesOf).filter(({ toolClass }) => toolClass !== 'line-up');
  return readings.map(({ depthMm }) => depthMm).sort((a, b) => a - b);
}

/**
 * One sigma of straying down to a depth, metres: between readings as far as the two directions leave it open, and below the deepest (from the collar
 * where there is none) as no one saw. Straight on, the bend there is one that no one knows; on the trend it is known as far as wander over the
 * trend's own length lets it be.
 */
function straysTo(
  readingsMm: readonly number[],
  depthMm: Depth,
  bendPer30m: number,
  projection: Projection,
): number {
  const above = [0, ...readingsMm.filter((each) => each > 0 && each <= depthMm)];
  const lastMm = above[above.length - 1] ?? 0;
  const between = above
    .slice(1)
    .reduce((sum, each, index) => sum + straysBetweenM((each - above[index]!) / 1000) ** 2, 0);
  const lengthM = (depthMm - lastMm) / 1000;
  const isBelowAll = readingsMm.every((each) => each <= depthMm);
  return Math.hypot(
    Math.sqrt(between),
    isBelowAll ? straysM(lengthM, bendBelow(lastMm, bendPer30m, projection)) : 0,
  );
}

function bendBelow(lastMm: number, bendPer30m: number, projection: Projection): number {
  const trendM = Math.min(TREND_LENGTH_M, lastMm / 1000);
  if (projection === 'straight' || trendM === 0) return bendPer30m;
  return Math.min(bendPer30m, WANDER_PER_30_M * Math.sqrt(BEND_LENGTH_M / trendM));
}

/** Between two shots wander can take a hole √(q·L³/12) off the arc: the integral of a Brownian bridge. 0.05 m in 30 m, 0.7 m in 160. */
function straysBetweenM(lengthM: number): number {
  return radians(WANDER_PER_30_M) * Math.sqrt(lengthM ** 3 / BEND_LENGTH_M / 12);
}

/**
 * A steady bend of one sigma takes a hole ½·κ·L² off its line, and a wander of √q a metre √(q·L³/3): the integral of a random walk of its
 * direction. The sizes (USUAL_BEND, WANDER_PER_30_M) are common practice, from memory: the program's own surveyed holes say more of its ground.
 */
function straysM(lengthM: number, bendPer30m: number): number {
  const bent = (radians(bendPer30m) / BEND_LENGTH_M) * (lengthM ** 2 / 2);
  const wandered = radians(WANDER_PER_30_M) * Math.sqrt(lengthM ** 3 / BEND_LENGTH_M / 3);
  return Math.hypot(bent, wandered);
}

/** One sigma at a depth, the longer way of the ellipse, metres. */
export interface GrowthPoint {
  readonly depthMm: Depth;
  readonly sigmaM: number;
}

/** How the uncertainty grows below the last station, straight on: there, then each 30 m and at `toMm`, so many points at most. */
export function growthBelow(
  stations: readonly RankedStation[],
  toMm: Depth,
  errors: Readonly<Record<ErrorClass, ToolErrors>>,
): readonly GrowthPoint[] {
  const lastMm = stations[stations.length - 1]?.depthMm ?? 0;
  const parts = Math.max(
    1,
    Math.min(MOST_GROWTH_POINTS, Math.ceil((toMm - lastMm) / (BEND_LENGTH_M * 1000))),
  );
  const depths = Array.from({ length: parts + 1 }, (_, part) => lastMm + ((toMm - lastMm) * part) / parts);
  return toMm <= lastMm
    ? []
    : depths.map((depth) => {
        const depthMm = depthFromMm(Math.round(depth / 1000) * 1000);
        return { depthMm, sigmaM: uncertaintyAt(stations, depthMm, errors, 'straight').ellipse.longM };
      });
}

const MOST_GROWTH_POINTS = 4;

/**
 * What a chance at the target rests on: shots (all of them, those that are left where some are marked as wrong, or shots marked as wrong
 * themselves), azimuths that nothing but the plan holds, the line-up's azimuth with measured dips, or the line-up alone.
 */
export type ChanceBasis =
  | 'shots'
  | 'shots that are left'
  | 'shots marked as wrong'
  | 'no line-up'
  | 'line-up and dips'
  | 'line-up';

/** What is known of a hole's direction: an azimuth that no shot measured is still the line-up's. */
export function chanceBasis(stations: readonly RankedStation[]): ChanceBasis {
  if (stations.some((one) => azimuthSharesOf(one).some(({ toolClass }) => toolClass !== 'line-up')))
    return 'shots';
  return stations.some((one) => one.run !== undefined) ? 'line-up and dips' : 'line-up';
}

/** How likely the hole is to pass within a radius of its target. */
export interface ChanceAtTarget {
  readonly atMm: Depth;
  readonly missM: number;
  readonly uncertainty: Uncertainty;
  /** 0 to 1. */
  readonly probability: number;
}

/** The uncertainty where the hole comes nearest to its target, and the probability that it passes within `radiusM` of it. */
export function chanceAtTarget(
  stations: readonly RankedStation[],
  plan: PlannedLine,
  radiusM: number,
  errors: Readonly<Record<ErrorClass, ToolErrors>>,
  projection: Projection,
): ChanceAtTarget {
  const path = pathOf(stations);
  const nearest = closestApproach(path, plan, projection);
  const atMm = depthFromMm(nearest.depthMm);
  const here = pointAt(path, atMm, projection);
  const uncertainty = uncertaintyAt(stations, atMm, errors, projection);
  const frame = squareFrame(here);
  const away = minus(here.offset, plannedPoint(plan, plan.targetMm));
  const square = minus(away, times(frame.down, dot(away, frame.down)));
  return {
    atMm,
    missM: nearest.distanceM,
    uncertainty,
    probability: probabilityWithin(
      dot(square, frame.up),
      dot(square, frame.right),
      uncertainty.spread,
      radiusM,
    ),
  };
}
