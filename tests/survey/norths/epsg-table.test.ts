import { describe, expect, test } from 'vitest';
import { convergenceDeg, fromOwnDegrees, type Grid, gridByCode } from '../../../src/survey/norths/grids.ts';
import { part } from '../../support/long-run.ts';
import { secondOpinion } from '../../support/projections/from-proj.ts';
import { gridCodes } from '../../support/projections/grid-codes.ts';

/**
 * Every system of the table against projections written a second time (tests/support/projections, each compared with its example in
 * print): metres and convergence at places of its own area. A parameter misread, left out or taken in the wrong sense shows here.
 */
const MOST_M = 0.001;
const MOST_SECONDS = 0.01;

/** How far from its origin each method is used, degrees north and east: small for series that are cut, and for cylinders laid aslant. */
const REACH: Readonly<Record<string, readonly [number, number]>> = {
  cass: [0.6, 0.6],
  omerc: [1.5, 1.5],
  somerc: [1, 1.5],
  krovak: [0.8, 1],
  sterea: [1.5, 2],
  poly: [6, 3],
  lcc: [3, 4],
};

/** Places in the area of a system, degrees from Greenwich. */
function placesOf(proj: string): readonly (readonly [latDeg: number, lonDeg: number])[] {
  const number = (key: string) => {
    const said = new RegExp(`\\+${key}=([-\\d.]+)`).exec(proj)?.[1];
    return said === undefined ? undefined : Number(said);
  };
  const method = /\+proj=(\w+)/.exec(proj)?.[1] ?? '';
  const [up, across] = REACH[method] ?? [5, 2.5];
  const zone = number('zone');
  const meridian = zone === undefined ? (number('lonc') ?? number('lon_0') ?? 0) : zone * 6 - 183;
  const lon = meridian + ferroOrOther(proj);
  return [-1, -0.3, 0.4, 1].flatMap((north) =>
    [-1, 0.2, 1].map((east) => [middleOf(proj, method, number) + north * up, lon + east * across] as const),
  );
}

/** A latitude in the middle of the area: between the parallels of a cone, at the origin of what lies about one, else somewhere of its half of the Earth. */
function middleOf(proj: string, method: string, number: (key: string) => number | undefined): number {
  const [first, second] = [number('lat_1'), number('lat_2')];
  if (first !== undefined) return second === undefined ? first : (first + second) / 2;
  const origin = number('lat_0') ?? 0;
  if (method !== 'tmerc' && method !== 'utm' && method !== 'poly') return origin;
  const south =
    proj.includes('+south') || (number('y_0') ?? 0) >= 5_000_000 || proj.includes('+axis=wsu') || origin < 0;
  return south ? -28 : 42;
}

function ferroOrOther(proj: string): number {
  const meridian = /\+pm=(\S+)/.exec(proj)?.[1];
  const known: Readonly<Record<string, number>> = {
    ferro: -17.67,
    paris: 2.34,
    lisbon: -9.13,
    bern: 7.44,
    oslo: 10.72,
  };
  return meridian === undefined ? 0 : (known[meridian] ?? Number(meridian));
}

/** Convergence by numerical derivative of the second opinion, degrees, grid north from true north, east positive. */
function convergenceBy(at: ReturnType<typeof secondOpinion>, latDeg: number, lonDeg: number): number {
  const step = 1e-4;
  const [e1, n1] = at(latDeg + step, lonDeg);
  const [e0, n0] = at(latDeg - step, lonDeg);
  return -Math.atan2(e1 - e0, n1 - n0) * (180 / Math.PI);
}

const byMethod = new Map<string, Grid[]>();
for (const code of gridCodes()) {
  const grid = gridByCode(code)!;
  const method = /\+proj=(\w+)/.exec(grid.proj)?.[1] ?? '';
  byMethod.set(method, [...(byMethod.get(method) ?? []), grid]);
}

describe('every system of the table', () => {
  test('is of a method that is checked here', () => {
    expect([...byMethod.keys()].sort()).toEqual([
      'cass',
      'krovak',
      'lcc',
      'omerc',
      'poly',
      'somerc',
      'sterea',
      'tmerc',
      'utm',
    ]);
  });

  test.each([...byMethod])(
    'by %s gives the metres and the convergence of a second opinion',
    (_method, grids) => {
      const off: string[] = [];
      for (const grid of part(grids, 5)) {
        const opinion = secondOpinion(grid.proj);
        for (const [latDeg, lonDeg] of placesOf(grid.proj)) {
          const where = `EPSG ${grid.code} ${grid.name} at ${latDeg}, ${lonDeg}`;
          const at = fromOwnDegrees(grid, { latDeg, lonDeg });
          const [eastM, northM] = opinion(latDeg, lonDeg);
          const metres = Math.max(Math.abs(at!.eastM - eastM), Math.abs(at!.northM - northM));
          const degrees = convergenceDeg(grid, at!)! - convergenceBy(opinion, latDeg, lonDeg);
          if (!(metres < MOST_M && Math.abs(degrees) * 3600 < MOST_SECONDS))
            off.push(`${where}: ${metres} m, ${degrees * 3600} seconds`);
        }
      }
      expect(off).toEqual([]);
    },
  );
});
