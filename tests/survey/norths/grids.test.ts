import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  convergenceDeg,
  formatAxes,
  formatDatumShift,
  fromWgs84,
  type Grid,
  gridByCode,
  gridByProj,
  toWgs84,
} from '../../../src/survey/norths/grids.ts';
import { gridCodes } from '../../support/projections/grid-codes.ts';

const grid = (code: number): Grid => {
  const found = gridByCode(code);
  if (found === undefined) throw new Error(`no grid ${code}`);
  return found;
};

/** A seven-parameter shift is undone by its signs alone, to first order: centimetres where its rotations are large. */
const HELMERT_M = 0.05;

/** A place inside the area of a system, near enough: read off its false origin. */
function placeIn(proj: string): { readonly eastM: number; readonly northM: number } {
  const number = (axis: string) => Number(new RegExp(`\\+${axis}=(\\S+)`).exec(proj)?.[1] ?? 0);
  if (proj.includes('+proj=krovak')) return { eastM: -600_000, northM: -1_100_000 };
  if (proj.includes('+proj=utm')) return { eastM: 540_000, northM: proj.includes('+south') ? 7e6 : 3e6 };
  return { eastM: number('x_0') + 40_000, northM: number('y_0') + (number('lat_0') === 0 ? 1e6 : 1e5) };
}

describe('the table of grids', () => {
  test('holds the Australian, the UTM and the common national grids under their register codes', () => {
    expect([28350, 7850, 32750, 32633, 2193, 2154, 31983, 20250].map((code) => grid(code).name)).toEqual([
      'GDA94 / MGA zone 50',
      'GDA2020 / MGA zone 50',
      'WGS 84 / UTM zone 50S',
      'WGS 84 / UTM zone 33N',
      'NZGD2000 / New Zealand Transverse Mercator 2000',
      'RGF93 v1 / Lambert-93',
      'SIRGAS 2000 / UTM zone 23S',
      expect.stringContaining('AMG zone'),
    ]);
  });

  test('puts the Australian grids on GRS80', () => {
    for (const code of [28350, 7850]) expect(grid(code).proj).toContain('+ellps=GRS80');
  });

  test('says of a code it does not hold that it does not', () => {
    expect(gridByCode(4326)).toBeUndefined();
    expect(gridByCode(28350.5)).toBeUndefined();
  });

  test('can be used, every system of it: to degrees and back is the same place', () => {
    for (const code of gridCodes()) {
      const one = grid(code);
      const at = placeIn(one.proj);
      const back = fromWgs84(one, toWgs84(one, at)!)!;
      expect(Math.abs(back.eastM - at.eastM), one.name).toBeLessThan(HELMERT_M);
      expect(Math.abs(back.northM - at.northM), one.name).toBeLessThan(HELMERT_M);
    }
  });
});

describe('convergence', () => {
  test('is nothing on the central meridian', () => {
    expect(Math.abs(convergenceDeg(grid(32750), { eastM: 500_000, northM: 7_000_000 })!)).toBeLessThan(1e-9);
  });

  test('of transverse Mercator is close to Δλ sin φ, east of the meridian in the north', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -70, max: 70, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (latDeg, away) => {
          const one = grid(latDeg < 0 ? 32733 : 32633);
          const at = fromWgs84(one, { latDeg, lonDeg: 15 + away })!;
          const rough = away * Math.sin((latDeg * Math.PI) / 180);
          expect(Math.abs(convergenceDeg(one, at)! - rough)).toBeLessThan(0.01);
        },
      ),
    );
  });

  test('of a conic grid is n × Δλ', () => {
    const lambert = grid(2154);
    const at = fromWgs84(lambert, { latDeg: 45, lonDeg: 6 })!;
    expect(convergenceDeg(lambert, at)!).toBeCloseTo(3 * 0.725607765053267, 6);
  });
});

describe("a project's own grid", () => {
  const read = (proj: string) => gridByProj('site', proj, { file: 'project.json' });
  const problem = (proj: string) => {
    const result = read(proj);
    return result.ok ? 'no problem' : result.findings[0]?.problem;
  };

  test('is read from a proj string in metres', () => {
    expect(problem('+proj=tmerc +lat_0=0 +lon_0=121 +k=1 +x_0=50000 +ellps=GRS80')).toBe('no problem');
  });

  test('is refused in degrees, in feet, with a grid file, or when it is not understood', () => {
    expect(problem('+proj=longlat +datum=WGS84')).toBe('degrees of latitude and longitude are no map grid');
    expect(problem('+proj=utm +zone=12 +units=us-ft')).toBe('the grid is not in metres');
    expect(problem('+proj=utm +zone=12 +nadgrids=old.gsb')).toContain('grid file');
    expect(problem('+proj=utm +zone=50 +ellps=WGS72')).toContain('the ellipsoid WGS72 is not known');
    expect(problem('+proj=utm +zone=50 +datum=GDA94')).toContain('the datum GDA94 is not known');
    expect(problem('+proj=utm +zone=50 +datum=WGS84')).toBe('no problem');
    expect(problem('zone 50')).toBe('the proj string is not understood');
  });
});

test('what is done about the datum is said in words', () => {
  expect(formatDatumShift(grid(32750))).toBe('on WGS 84, no datum shift');
  expect(formatDatumShift(grid(28350))).toContain('taken as WGS 84');
  expect(formatDatumShift(grid(24877))).toContain('7 parameters');
});

test('a grid counted west and south is used east and north, and says how to give it', () => {
  const lo19 = grid(2048);
  const at = fromWgs84(lo19, { latDeg: -30, lonDeg: 18.4 })!;
  // 0.6° of longitude west of the meridian at 30° S is 57.9 km, and 30° of latitude 3,320 km.
  expect(at.eastM).toBeCloseTo(-57_892, -1);
  expect(at.northM).toBeCloseTo(-3_320_265, -1);
  expect(formatAxes(lo19)).toContain('minus the westing');
  expect(formatAxes(grid(7850))).toBeUndefined();
});

test('names keep their zeros', () => {
  expect(grid(3009).name).toBe('SWEREF99 15 00');
});
