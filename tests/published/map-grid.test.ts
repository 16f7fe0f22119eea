import { describe, expect, test } from 'vitest';
import {
  convergenceDeg,
  fromWgs84,
  type Grid,
  gridByCode,
  gridByProj,
  toWgs84,
} from '../../src/survey/norths/grids.ts';

/** Degrees from degrees, minutes, seconds, the sign said once. */
const dms = (sign: 1 | -1, deg: number, min: number, sec: number) => sign * (deg + min / 60 + sec / 3600);

const grid = (code: number): Grid => {
  const found = gridByCode(code);
  if (found === undefined) throw new Error(`no grid ${code}`);
  return found;
};

/**
 * ICSM, GDA2020 Technical Manual v1.3, p. 75, Figure C.2; the zone 54 row from the GDA Technical Manual v2.3, adjoining-zone
 * example (read at second hand). Coordinates to 1 mm, convergence to 0.001″ (0.01″ in the last row). The manual counts
 * convergence the other way (grid = true + convergence): its figures are taken here with the sign changed.
 */
const POINTS = [
  [
    'Flinders Peak',
    7855,
    dms(-1, 37, 57, 3.7203),
    dms(1, 144, 25, 29.5244),
    273741.297,
    5796489.777,
    dms(-1, 1, 35, 3.647),
  ],
  [
    'Buninyong',
    7855,
    dms(-1, 37, 39, 10.1561),
    dms(1, 143, 55, 35.3839),
    228854.051,
    5828259.038,
    dms(-1, 1, 52, 43.219),
  ],
  [
    'Bellarine',
    7855,
    dms(-1, 38, 9, 5.22717),
    dms(1, 144, 36, 43.67715),
    290769.028,
    5774686.632,
    dms(-1, 1, 28, 32.238),
  ],
  [
    'Buninyong in zone 54',
    28354,
    dms(-1, 37, 39, 10.1561),
    dms(1, 143, 55, 35.3839),
    758173.797,
    5828674.34,
    dms(1, 1, 47, 19.36),
  ],
] as const;

describe('map grid coordinates', () => {
  test.each(POINTS)('of %s agree with the manual to 1 mm', (_name, code, latDeg, lonDeg, eastM, northM) => {
    const at = fromWgs84(grid(code), { latDeg, lonDeg })!;
    expect(Math.abs(at.eastM - eastM)).toBeLessThan(0.001);
    expect(Math.abs(at.northM - northM)).toBeLessThan(0.001);
    const back = toWgs84(grid(code), at)!;
    expect(back.latDeg).toBeCloseTo(latDeg, 9);
    expect(back.lonDeg).toBeCloseTo(lonDeg, 9);
  });

  test.each(POINTS)(
    'convergence at %s agrees with the manual to 0.01″, with the sign of grid north from true north',
    (_name, code, _lat, _lon, eastM, northM, manualDeg) => {
      const found = convergenceDeg(grid(code), { eastM, northM })!;
      expect(Math.abs(found + manualDeg) * 3600).toBeLessThan(0.01);
    },
  );

  // Snyder, Map Projections: A Working Manual, USGS Professional Paper 1395, p. 269 (read at second hand): Clarke 1866, zone 18,
  // 40°30′N 73°30′W gives x = 127,106.5 (500 km false easting taken off) and y = 4,484,124.4; printed to 0.1 m.
  test("of Snyder's worked example agree to its printed decimetre", () => {
    const clarke = gridByProj('Snyder', '+proj=utm +zone=18 +ellps=clrk66', {
      file: 'project.json',
    });
    if (!clarke.ok) throw new Error(clarke.findings[0]?.problem);
    const at = fromWgs84(clarke.value, { latDeg: 40.5, lonDeg: -73.5 })!;
    expect(Math.abs(at.eastM - 627106.5)).toBeLessThan(0.06);
    expect(Math.abs(at.northM - 4484124.4)).toBeLessThan(0.06);
  });
});
