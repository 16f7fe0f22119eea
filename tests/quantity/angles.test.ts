import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { azimuth, degreesBetween, foldDegrees, formatAzimuth } from '../../src/quantity/azimuth.ts';
import { dip, formatDip } from '../../src/quantity/dip.ts';

const anAngle = fc.double({ min: -1e6, max: 1e6, noNaN: true });

describe('an azimuth', () => {
  test('is folded into 0 to under 360 degrees and never minus zero', () => {
    fc.assert(
      fc.property(anAngle, (deg) => {
        const folded = foldDegrees(deg);
        expect(folded >= 0 && folded < 360 && !Object.is(folded, -0)).toBe(true);
        expect(Math.cos((folded * Math.PI) / 180)).toBeCloseTo(Math.cos((deg * Math.PI) / 180), 6);
      }),
    );
    expect(foldDegrees(-1e-20)).toBe(0);
    expect(foldDegrees(360)).toBe(0);
  });

  test('keeps its north, and its epoch where it has one', () => {
    expect(azimuth(365, 'magnetic', 2026.5)).toEqual({ deg: 5, north: 'magnetic', epoch: 2026.5 });
    expect(azimuth(-10, 'grid')).toEqual({ deg: 350, north: 'grid' });
    expect(() => azimuth(Number.NaN, 'true')).toThrow(RangeError);
  });

  test('differs from another by at most half a turn, the short way round', () => {
    expect(degreesBetween(5, 355)).toBe(10);
    expect(degreesBetween(355, 5)).toBe(-10);
    expect(degreesBetween(180, 0)).toBe(180);
    expect(degreesBetween(0, 180)).toBe(180);
  });

  test('is printed in three digits with a decimal and its north, and 359.96 as 000.0', () => {
    expect(formatAzimuth(azimuth(90, 'grid'))).toBe('090.0° grid');
    expect(formatAzimuth(azimuth(5.25, 'mine-grid'))).toBe('005.3° mine grid');
    expect(formatAzimuth(azimuth(359.96, 'true'))).toBe('000.0° true');
  });
});

describe('a dip', () => {
  test('is refused beyond vertical', () => {
    for (const deg of [-90.1, 91, Number.NaN]) expect(() => dip(deg)).toThrow(RangeError);
  });

  test.each([
    [-60.5, '-60.5°'],
    [-60.25, '-60.3°'],
    [60.25, '60.3°'],
    [-0.04, '0.0°'],
    [-0, '0.0°'],
    [-90, '-90.0°'],
  ])('of %s is printed as %s', (deg, text) => {
    expect(formatDip(deg)).toBe(text);
  });
});
