import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { azimuth, degreesBetween, formatAzimuth, NORTHS } from '../../../src/quantity/azimuth.ts';
import {
  formatConvergence,
  formatDeclination,
  inEveryNorth,
  toNorth,
} from '../../../src/survey/norths/norths.ts';

const ANGLES = { declinationDeg: 1.5, convergenceDeg: -0.75, mineGridRotationDeg: 30 };

describe('an azimuth counted from another north', () => {
  test('true is magnetic plus declination, east positive', () => {
    expect(toNorth(azimuth(90, 'magnetic'), 'true', ANGLES)).toEqual(azimuth(91.5, 'true'));
  });

  test('grid is true less convergence, east positive', () => {
    expect(toNorth(azimuth(90, 'true'), 'grid', ANGLES)).toEqual(azimuth(90.75, 'grid'));
  });

  test('mine grid is grid less the rotation, whatever the convergence', () => {
    expect(toNorth(azimuth(10, 'grid'), 'mine-grid', { mineGridRotationDeg: 30 })).toEqual(
      azimuth(340, 'mine-grid'),
    );
  });

  test('goes there and back again', () => {
    const north = fc.constantFrom(...NORTHS);
    const angle = fc.double({ min: -180, max: 180, noNaN: true });
    fc.assert(
      fc.property(angle, north, north, angle, angle, angle, (deg, from, to, d, c, r) => {
        const angles = { declinationDeg: d, convergenceDeg: c, mineGridRotationDeg: r };
        const a = azimuth(deg, from);
        const back = toNorth(toNorth(a, to, angles)!, from, angles)!;
        expect(Math.abs(degreesBetween(back.deg, a.deg))).toBeLessThan(1e-9);
      }),
    );
  });

  test('is not known without the angle it needs', () => {
    expect(toNorth(azimuth(90, 'magnetic'), 'grid', { declinationDeg: 1.5 })).toBeUndefined();
    expect(toNorth(azimuth(90, 'grid'), 'mine-grid', { convergenceDeg: 1 })).toBeUndefined();
    expect(toNorth(azimuth(90, 'true'), 'mine-grid', { mineGridRotationDeg: 30 })).toBeUndefined();
  });

  test('keeps the epoch of a magnetic north', () => {
    expect(toNorth(azimuth(91.5, 'true'), 'magnetic', ANGLES, 2026.2)).toEqual(
      azimuth(90, 'magnetic', 2026.2),
    );
  });
});

test('a planned direction is shown in every north that is known', () => {
  expect(inEveryNorth(azimuth(90, 'grid'), ANGLES).map(formatAzimuth)).toEqual([
    '089.3° true',
    '087.8° magnetic',
    '090.0° grid',
    '060.0° mine grid',
  ]);
  expect(inEveryNorth(azimuth(90, 'grid'), {}).map(formatAzimuth)).toEqual(['090.0° grid']);
});

test('each angle is printed with its side and its convention', () => {
  expect(formatConvergence(-1.584)).toBe(
    'convergence 1.58° west (grid north from true north; grid = true - convergence, east positive)',
  );
  expect(formatDeclination(1.5)).toContain('1.50° east');
  expect(formatDeclination(-0.001)).toContain('declination 0.00° (');
});
