import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatMass, kilograms, massFromGrams, massFromKg } from '../../src/quantity/mass.ts';

describe('a mass', () => {
  test('is the same in kilograms and back', () => {
    fc.assert(
      fc.property(fc.nat(), (grams) => {
        expect(massFromKg(kilograms(massFromGrams(grams)))).toBe(grams);
      }),
    );
  });

  test('is whole grams, at least none, and never minus zero', () => {
    for (const grams of [-1, 0.5, Number.NaN, 2 ** 53])
      expect(() => massFromGrams(grams)).toThrow(RangeError);
    for (const kg of [-0.1, Number.NaN, Number.POSITIVE_INFINITY, 1e300])
      expect(() => massFromKg(kg)).toThrow(RangeError);
    expect(Object.is(massFromKg(-0), 0)).toBe(true);
  });

  test('is printed in kilograms with one decimal', () => {
    expect(formatMass(massFromGrams(41_390))).toBe('41.4 kg');
  });
});
