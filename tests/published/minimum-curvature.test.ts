import { describe, expect, test } from 'vitest';
import { azimuth } from '../../src/quantity/azimuth.ts';
import { dip } from '../../src/quantity/dip.ts';
import { type Direction, degrees } from '../../src/survey/direction.ts';
import { alongArc, arcBetween, displacement, ratioFactor } from '../../src/survey/path/minimum-curvature.ts';

/** A direction as the sources print it: inclination from vertical, azimuth. */
const pointing = (inclination: number, bearing: number): Direction => ({
  azimuth: azimuth(bearing, 'grid'),
  dip: dip(inclination - 90),
});

describe('minimum curvature against published figures', () => {
  // Lapeyrouse, Formulas and Calculations for Drilling, Production and Workover, 2nd ed., as printed on a teaching page
  // (drillingformulas.com/minimum-curvature-method): 15°/20° to 25°/45° over 100 ft gives N 27.22, E 19.45, TVD 94.01,
  // β = 0.22605 rad. It prints RF = 1.00408, which its own formula doesn't give and its own displacement doesn't bear out
  // (1.00408 would make N 27.21): (2/0.22605) tan(0.22605/2) = 1.00428.
  test('the worked example of Lapeyrouse comes out to its printed digits', () => {
    const arc = arcBetween(pointing(15, 20), pointing(25, 45), 100);
    const moved = displacement(arc);
    expect(moved.north).toBeCloseTo(27.22, 2);
    expect(moved.east).toBeCloseTo(19.45, 2);
    expect(moved.down).toBeCloseTo(94.01, 2);
    expect(arc.betaRad).toBeCloseTo(0.22605, 5);
    expect(ratioFactor(arc.betaRad)).toBeCloseTo(1.00428, 5);
  });

  // Bourgoyne et al., Applied Drilling Engineering (SPE Textbook 2, 1986), ch. 8, after Craig & Randall, Petroleum
  // Engineer, March 1976: 3°/100 ft due north from vertical to 60° over 2,000 ft; minimum curvature is printed as TVD
  // 1653.99, north 954.93.
  test('twenty legs of 3° a hundred feet end where the textbook prints', () => {
    let north = 0;
    let down = 0;
    for (let leg = 0; leg < 20; leg++) {
      const moved = displacement(arcBetween(pointing(3 * leg, 0), pointing(3 * leg + 3, 0), 100));
      north += moved.north;
      down += moved.down;
    }
    expect(down).toBeCloseTo(1653.99, 2);
    expect(north).toBeCloseTo(954.93, 2);
  });

  // The same arc, exact: radius R = 2000/(π/3) ft, N = R(1 − cos I), TVD = R sin I.
  test.each([
    [100, 2.617396, 99.954314],
    [200, 10.462409, 199.634659],
    [300, 23.513537, 298.767821],
    [400, 41.735008, 397.08208],
    [500, 65.076878, 494.307965],
    [600, 93.475168, 590.178986],
    [700, 126.852041, 684.432367],
    [800, 165.116013, 776.809767],
    [900, 208.162205, 867.057986],
    [1000, 255.872631, 954.929659],
    [1100, 308.116519, 1040.183935],
    [1200, 364.750673, 1122.587141],
    [1300, 425.619862, 1201.913412],
    [1400, 490.557248, 1277.945323],
    [1500, 559.384843, 1350.474474],
    [1600, 631.913994, 1419.302069],
    [1700, 707.945905, 1484.239455],
    [1800, 787.272177, 1545.108644],
    [1900, 869.675382, 1601.742798],
    [2000, 954.929659, 1653.986686],
  ])('one leg from vertical to 60° lies on the exact circle at %d ft', (depth, north, down) => {
    const arc = arcBetween(pointing(0, 0), pointing(60, 0), 2000);
    const there = alongArc(arc, depth).offset;
    expect(there.north).toBeCloseTo(north, 6);
    expect(there.down).toBeCloseTo(down, 6);
    const radius = 2000 / (Math.PI / 3);
    const inclination = depth / radius;
    expect(Math.abs(there.north / (radius * (1 - Math.cos(inclination))) - 1)).toBeLessThan(1e-9);
    expect(Math.abs(there.down / (radius * Math.sin(inclination)) - 1)).toBeLessThan(1e-9);
    expect(there.east).toBe(0);
  });
});

describe('minimum curvature against numerical integration', () => {
  // Each derived outside the project by integrating the direction along the arc numerically.
  test.each([
    ['vertical and straight', [0, 0, 0, 0, 100], 0, [0, 0, 100]],
    ['a quarter circle', [0, 90, 90, 90, 100], 90, [0, 63.6619772368, 63.6619772368]],
    [
      'from vertical, where the first azimuth says nothing',
      [0, 123, 10, 250, 30],
      10,
      [-0.8931359776, -2.4538709309, 29.8479231014],
    ],
    [
      'a bend of a ten-millionth of a degree',
      [60, 10, 60.0000001, 10, 30],
      1.00000001169e-7,
      [25.5860559715, 4.5115119977, 14.9999999773],
    ],
    ['no bend at all', [73.2, 211.4, 73.2, 211.4, 12.5], 0, [-10.2140102546, -6.234658487, 3.6128974618]],
    [
      'a hole at -60° drifting to the right',
      [30, 270, 32, 274.5, 30],
      3.06014620498,
      [0.623803089, -15.4279531408, 25.7172161755],
    ],
  ] as const)('%s', (_name, [inc1, azi1, inc2, azi2, lengthM], dogleg, [north, east, down]) => {
    const arc = arcBetween(pointing(inc1, azi1), pointing(inc2, azi2), lengthM);
    const moved = displacement(arc);
    expect(moved.north).toBeCloseTo(north, 9);
    expect(moved.east).toBeCloseTo(east, 9);
    expect(moved.down).toBeCloseTo(down, 9);
    expect(degrees(arc.betaRad)).toBeCloseTo(dogleg, 10);
    if (dogleg > 0) expect(Math.abs(degrees(arc.betaRad) / dogleg - 1)).toBeLessThan(1e-7);
  });
});
