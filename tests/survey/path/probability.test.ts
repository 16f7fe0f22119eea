import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  ellipseOf,
  errorFunction,
  normalBelow,
  probabilityWithin,
} from '../../../src/survey/path/probability.ts';

// Abramowitz & Stegun, Handbook of Mathematical Functions (1964), Table 7.1.
test.each([
  [0, 0],
  [0.5, 0.5204998778],
  [1, 0.8427007929],
  [2, 0.995322265],
])('the error function of %f is %f', (x, value) => {
  expect(Math.abs(errorFunction(x) - value)).toBeLessThan(2e-7);
  expect(Math.abs(errorFunction(-x) + value)).toBeLessThan(2e-7);
});

test('without spread a normal value is where its mean is', () => {
  expect([normalBelow(-1, 0), normalBelow(0, 0), normalBelow(1, 0)]).toEqual([0, 1, 1]);
});

describe('the ellipse of a spread', () => {
  test('has its longer axis where the spread is larger', () => {
    expect(ellipseOf({ xx: 4, xy: 0, yy: 1 })).toEqual({ longM: 2, shortM: 1, angleDeg: 0 });
    expect(ellipseOf({ xx: 1, xy: 0, yy: 4 })).toMatchObject({ longM: 2, shortM: 1, angleDeg: 90 });
    expect(ellipseOf({ xx: 2.5, xy: 1.5, yy: 2.5 }).angleDeg).toBeCloseTo(45, 9);
  });

  test('of a line is a line', () => {
    expect(ellipseOf({ xx: 1, xy: 1, yy: 1 }).shortM).toBeCloseTo(0, 9);
  });
});

describe('the probability of lying within a radius', () => {
  test('of a round spread about the middle is 1 − exp(−R²/2σ²)', () => {
    for (const radius of [0.5, 1, 3]) {
      const found = probabilityWithin(0, 0, { xx: 4, xy: 0, yy: 4 }, radius);
      expect(found).toBeCloseTo(1 - Math.exp((-radius * radius) / 8), 6);
    }
  });

  test('does not change when everything is turned', () => {
    const plain = probabilityWithin(1, 2, { xx: 9, xy: 0, yy: 1 }, 3);
    const quarter = probabilityWithin(-2, 1, { xx: 1, xy: 0, yy: 9 }, 3);
    expect(quarter).toBeCloseTo(plain, 9);
  });

  test('is a yes or a no where there is no spread', () => {
    const none = { xx: 0, xy: 0, yy: 0 };
    expect([probabilityWithin(3, 0, none, 3), probabilityWithin(3.01, 0, none, 3)]).toEqual([1, 0]);
  });

  test('lies between 0 and 1, grows with the radius, and is small far away', () => {
    const size = fc.double({ min: 0.01, max: 30, noNaN: true });
    fc.assert(
      fc.property(size, size, size, size, (sx, sy, mean, radius) => {
        const spread = { xx: sx * sx, xy: 0, yy: sy * sy };
        const small = probabilityWithin(mean, 0, spread, radius);
        const large = probabilityWithin(mean, 0, spread, radius * 1.2);
        expect(small).toBeGreaterThanOrEqual(-1e-6);
        expect(large).toBeLessThanOrEqual(1);
        expect(large).toBeGreaterThanOrEqual(small - 1e-6);
      }),
    );
    expect(probabilityWithin(100, 0, { xx: 1, xy: 0, yy: 1 }, 5)).toBeLessThan(1e-6);
  });
});
