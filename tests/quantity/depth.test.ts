import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  DEEPEST_M,
  depthFromMetres,
  depthFromMm,
  formatDepth,
  metres,
  parseDepth,
} from '../../src/quantity/depth.ts';

const aDepthMm = fc.integer({ min: 0, max: DEEPEST_M * 1000 });

describe('a depth', () => {
  test('reads back from what it prints', () => {
    fc.assert(
      fc.property(aDepthMm, (mm) => {
        expect(parseDepth(formatDepth(mm))).toBe(mm);
      }),
    );
  });

  test('is the same in metres and back', () => {
    fc.assert(
      fc.property(aDepthMm, (mm) => {
        expect(depthFromMetres(metres(mm))).toBe(mm);
      }),
    );
  });

  test.each([
    ['46', 46_000],
    ['46.5', 46_500],
    ['.5', 500],
    ['0', 0],
    ['0046.125', 46_125],
    ['5000', 5_000_000],
  ])('is read from %s', (text, mm) => {
    expect(parseDepth(text)).toBe(mm);
  });

  test.each(['', ' 46', '46.', '-1', '46,5', '46.1234', '5000.001', '1e3', '0x10', '46m', '٤٦'])(
    'is not read from "%s"',
    (text) => {
      expect(parseDepth(text)).toBeUndefined();
    },
  );

  test.each([
    [0, '0'],
    [-0, '0'],
    [46_000, '46'],
    [46_500, '46.5'],
    [46_050, '46.05'],
    [46_125, '46.125'],
    [-1500, '-1.5'],
    [-0.4, '0'],
  ])('of %s mm is printed as %s', (mm, text) => {
    expect(formatDepth(mm)).toBe(text);
  });

  test('is whole millimetres and never minus zero', () => {
    expect(() => depthFromMm(0.5)).toThrow(RangeError);
    expect(() => depthFromMm(2 ** 53)).toThrow(RangeError);
    expect(() => depthFromMetres(Number.NaN)).toThrow(RangeError);
    expect(() => depthFromMetres(1e300)).toThrow(RangeError);
    expect(Object.is(depthFromMm(-0), 0)).toBe(true);
    expect(Object.is(depthFromMetres(-0.0001), 0)).toBe(true);
  });
});
