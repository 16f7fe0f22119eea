import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { convergenceDeg, fromWgs84, type Grid, gridByCode } from '../../src/survey/norths/grids.ts';

/**
 * The transverse Mercator projection worked out a second way, by Krüger's series in the third flattening n: Karney 2011,
 * Transverse Mercator with an accuracy of a few nanometers, Journal of Geodesy 85, 475–485, equations 7–11, 14, 23–26 and 35 cut after
 * n⁴ (a tenth of a micrometre). Convergence is the bearing of grid north from true north, east positive, as here.
 */
function krueger(latDeg: number, awayDeg: number) {
  const a = 6378137;
  const f = 1 / 298.257222101; // GRS80
  const n = f / (2 - f);
  const e = Math.sqrt(f * (2 - f));
  const rad = Math.PI / 180;
  const lambda = awayDeg * rad;
  const tau = Math.tan(latDeg * rad);
  const sigma = Math.sinh(e * Math.atanh((e * tau) / Math.hypot(1, tau)));
  const tauC = tau * Math.hypot(1, sigma) - sigma * Math.hypot(1, tau);
  const xi = Math.atan2(tauC, Math.cos(lambda));
  const eta = Math.asinh(Math.sin(lambda) / Math.hypot(tauC, Math.cos(lambda)));
  const alpha = [
    n / 2 - (2 * n ** 2) / 3 + (5 * n ** 3) / 16 + (41 * n ** 4) / 180,
    (13 * n ** 2) / 48 - (3 * n ** 3) / 5 + (557 * n ** 4) / 1440,
    (61 * n ** 3) / 240 - (103 * n ** 4) / 140,
    (49561 * n ** 4) / 161280,
  ];
  let [x, y, p, q] = [eta, xi, 1, 0];
  alpha.forEach((value, index) => {
    const twice = 2 * (index + 1);
    y += value * Math.sin(twice * xi) * Math.cosh(twice * eta);
    x += value * Math.cos(twice * xi) * Math.sinh(twice * eta);
    p += twice * value * Math.cos(twice * xi) * Math.cosh(twice * eta);
    q += twice * value * Math.sin(twice * xi) * Math.sinh(twice * eta);
  });
  const rectifying = (a / (1 + n)) * (1 + n ** 2 / 4 + n ** 4 / 64);
  const turned = Math.atan((tauC / Math.hypot(1, tauC)) * Math.tan(lambda)) + Math.atan2(q, p);
  return {
    eastM: 500_000 + 0.9996 * rectifying * x,
    northM: 10_000_000 + 0.9996 * rectifying * y,
    convergenceDeg: turned / rad,
  };
}

const grid = gridByCode(7850) as Grid;
const latitude = fc.double({ min: -70, max: -0.01, noNaN: true });
const away = fc.double({ min: -4, max: 4, noNaN: true });

describe('transverse Mercator against an independent series', () => {
  test('coordinates agree to a tenth of a millimetre', () => {
    fc.assert(
      fc.property(latitude, away, (latDeg, awayDeg) => {
        const series = krueger(latDeg, awayDeg);
        const at = fromWgs84(grid, { latDeg, lonDeg: 117 + awayDeg })!;
        expect(Math.abs(at.eastM - series.eastM)).toBeLessThan(1e-4);
        expect(Math.abs(at.northM - series.northM)).toBeLessThan(1e-4);
      }),
    );
  });

  test('convergence agrees to a thousandth of a second', () => {
    fc.assert(
      fc.property(latitude, away, (latDeg, awayDeg) => {
        const series = krueger(latDeg, awayDeg);
        expect(Math.abs(convergenceDeg(grid, series)! - series.convergenceDeg) * 3600).toBeLessThan(1e-3);
      }),
    );
  });

  // ICSM, GDA2020 Technical Manual v1.3, p. 75 (Flinders Peak): so that the series is held against print as well.
  test('the series itself gives the figures of the manual', () => {
    const flinders = krueger(-(37 + 57 / 60 + 3.7203 / 3600), 144 + 25 / 60 + 29.5244 / 3600 - 147);
    expect(flinders.eastM).toBeCloseTo(273741.297, 3);
    expect(flinders.northM).toBeCloseTo(5796489.777, 3);
    expect(flinders.convergenceDeg).toBeCloseTo(1 + 35 / 60 + 3.647 / 3600, 6);
  });
});
