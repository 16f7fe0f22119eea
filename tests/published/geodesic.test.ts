import fc from 'fast-check';
import geodesic from 'geographiclib-geodesic';
import { describe, expect, test } from 'vitest';
import {
  bearingAndDistance,
  convergenceDeg,
  fromOwnDegrees,
  type Grid,
  gridByCode,
} from '../../src/survey/norths/grids.ts';

/**
 * Lengths and azimuths on the ellipsoid by an independent geodesy library (Karney, Algorithms for geodesics, Journal of Geodesy 87, 43–55,
 * 2013): a short line set out from a place with a true azimuth has, on the grid, that azimuth less the convergence, and the scale of the
 * projection for its length.
 */
const { Geodesic } = geodesic;
const GRS80 = new Geodesic.Geodesic(6378137, 1 / 298.257222101);

/** A line so short that its curving on the grid stays below a thousandth of a second, metres. */
const SHORT_M = 2;

const place = fc.record({
  latDeg: fc.double({ min: -43, max: -11, noNaN: true }),
  away: fc.double({ min: -3, max: 3, noNaN: true }),
  azimuth: fc.double({ min: 0, max: 360, noNaN: true }),
});

/** Point scale of a transverse Mercator grid near its meridian: Snyder, USGS Professional Paper 1395, equation 8-11. */
function scaleAt(latDeg: number, awayDeg: number): number {
  const [phi, lambda] = [(latDeg * Math.PI) / 180, (awayDeg * Math.PI) / 180];
  const e2 = 2 / 298.257222101 - 1 / 298.257222101 ** 2;
  const second = e2 / (1 - e2);
  const t = Math.tan(phi) ** 2;
  const c = second * Math.cos(phi) ** 2;
  const a = lambda * Math.cos(phi);
  return (
    0.9996 *
    (1 +
      ((1 + c) * a ** 2) / 2 +
      ((5 - 4 * t + 42 * c + 13 * c * c - 28 * second) * a ** 4) / 24 +
      ((61 - 148 * t + 16 * t * t) * a ** 6) / 720)
  );
}

describe('a short line set out on the ellipsoid', () => {
  const grid = gridByCode(7851) as Grid;

  test('has on the grid its true azimuth less the convergence, to a hundredth of a second', () => {
    fc.assert(
      fc.property(place, ({ latDeg, away, azimuth }) => {
        const start = { latDeg, lonDeg: 123 + away };
        const end = GRS80.Direct(start.latDeg, start.lonDeg, azimuth, SHORT_M);
        const from = fromOwnDegrees(grid, start)!;
        const to = fromOwnDegrees(grid, { latDeg: end.lat2!, lonDeg: end.lon2! })!;
        const { deg, metres } = bearingAndDistance(from, to);
        const off = deg - (azimuth - convergenceDeg(grid, from)!);
        expect(Math.abs(((off + 540) % 360) - 180) * 3600).toBeLessThan(0.01);
        expect(Math.abs(metres / SHORT_M / scaleAt(latDeg, away) - 1)).toBeLessThan(1e-8);
      }),
    );
  });

  // ICSM, GDA2020 Technical Manual: Flinders Peak to Buninyong, 54,972.271 m at 306°52′05.373″ (positions [S] p. 75; this line from memory).
  test('between two pegs of the manual has the length and the azimuth that it gives', () => {
    const flinders = [-(37 + 57 / 60 + 3.7203 / 3600), 144 + 25 / 60 + 29.5244 / 3600] as const;
    const buninyong = [-(37 + 39 / 60 + 10.1561 / 3600), 143 + 55 / 60 + 35.3839 / 3600] as const;
    const line = GRS80.Inverse(flinders[0], flinders[1], buninyong[0], buninyong[1]);
    expect(line.s12).toBeCloseTo(54_972.271, 3);
    expect(((line.azi1 ?? 0) + 360) % 360).toBeCloseTo(306 + 52 / 60 + 5.373 / 3600, 6);
  });
});
