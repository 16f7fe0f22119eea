import { degreesBetween } from '../../quantity/azimuth.ts';
import type { Depth } from '../../quantity/depth.ts';
import { angleBetweenDeg, type Direction, radians } from '../direction.ts';
import type { RankedStation } from '../shots/runs.ts';
import type { Bend } from './evidence.ts';

/** How a surveyed hole of the program bends: degrees in space per 30 m, turn to the right and lift positive, and where it points. */
export interface HoleBend {
  readonly turnPer30m: number;
  readonly liftPer30m: number;
  readonly direction: Direction;
}

/** Fewer shots, or a shorter stretch, say little of how a hole bends. */
const FEWEST_SHOTS = 3;
const SHORTEST_MM = 40_000;

/**
 * How a hole bends by the run that measured the longest stretch of it: the slope of the line of least squares through its shots. Within one
 * run, so that an angle by which the whole run is turned says nothing of it.
 */
export function bendOfHole(stations: readonly RankedStation[]): HoleBend | undefined {
  const measured = stations.filter((one) => one.basis === 'measured');
  const runs = [...new Set(measured.map((one) => one.run))].map((run) =>
    measured.filter((one) => one.run === run),
  );
  const [longest] = runs
    .filter((shots) => shots.length >= FEWEST_SHOTS && lengthMm(shots) >= SHORTEST_MM)
    .sort((a, b) => lengthMm(b) - lengthMm(a));
  const first = longest?.[0];
  if (longest === undefined || first === undefined) return undefined;
  const turns = longest.map((one) => degreesBetween(one.azimuth.deg, first.azimuth.deg));
  const dips = longest.map((one) => one.dip - first.dip);
  const depths = longest.map((one) => one.depthMm / 30_000);
  return {
    turnPer30m: slope(depths, turns) * Math.cos(radians(first.dip)),
    liftPer30m: slope(depths, dips),
    direction: first,
  };
}

function lengthMm(shots: readonly { readonly depthMm: Depth }[]): number {
  return shots[shots.length - 1]!.depthMm - shots[0]!.depthMm;
}

function slope(x: readonly number[], y: readonly number[]): number {
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [mx, my] = [mean(x), mean(y)];
  const across = x.reduce((sum, value, index) => sum + (value - mx) * (y[index]! - my), 0);
  return across / x.reduce((sum, value) => sum + (value - mx) ** 2, 0);
}

/** How far one hole bends from none where nothing is known of its neighbours, degrees in space per 30 m, one sigma. From memory. */
export const USUAL_BEND = { turn: 0.45, lift: 0.55 } as const;
/** Neighbours that point further off than this bend in other ground, degrees. */
const ALIKE_DEG = 45;

/**
 * How a hole that points along `direction` is expected to bend, by its surveyed neighbours that point alike: their mean and their spread,
 * both drawn towards the usual where they are few.
 */
export function expectedBend(
  kind: 'turn' | 'lift',
  direction: Direction,
  neighbours: readonly HoleBend[],
): Bend {
  const usual = USUAL_BEND[kind];
  const alike = neighbours
    .filter(
      (one) =>
        one.direction.azimuth.north === direction.azimuth.north &&
        angleBetweenDeg(one.direction, direction) <= ALIKE_DEG,
    )
    .map((one) => (kind === 'turn' ? one.turnPer30m : one.liftPer30m));
  const count = alike.length;
  const meanPer30m = alike.reduce((sum, each) => sum + each, 0) / (count + 1);
  // The usual counts as two holes.
  const spread =
    (2 * usual ** 2 + alike.reduce((sum, each) => sum + (each - meanPer30m) ** 2, 0)) / (2 + count);
  return { meanPer30m, sigmaPer30m: Math.sqrt(spread * (1 + 1 / (2 + count))) };
}
