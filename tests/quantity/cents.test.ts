import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cents, formatCents, type Rounding } from '../../src/quantity/cents.ts';
import { runs } from '../support/long-run.ts';

/** A quotient of integers rounded without a floating point: by twice the remainder. */
function rounded(numerator: bigint, denominator: bigint, rounding: Rounding): bigint {
  const size = numerator < 0n ? -numerator : numerator;
  const floor = size / denominator;
  const twice = 2n * (size % denominator);
  const half = twice === denominator;
  const up =
    rounding === 'half-up'
      ? twice >= denominator
      : rounding === 'half-even'
        ? twice > denominator || (half && floor % 2n === 1n)
        : false;
  const result = floor + (up ? 1n : 0n);
  return numerator < 0n ? -result : result;
}

describe('cents', () => {
  test('of a rate times minutes or millimetres are exact, halves included', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1_000_000, max: 1_000_000 }),
        fc.integer({ min: 0, max: 100_000 }),
        fc.constantFrom(60, 1000),
        fc.constantFrom<Rounding>('half-up', 'half-even', 'down'),
        (rate, amount, unit, rounding) => {
          expect(BigInt(cents((rate * amount) / unit, rounding))).toBe(
            rounded(BigInt(rate) * BigInt(amount), BigInt(unit), rounding),
          );
        },
      ),
      { numRuns: runs(5000) },
    );
  });

  test.each<[number, Rounding, number]>([
    [0.5, 'half-up', 1],
    [-0.5, 'half-up', -1],
    [0.5, 'half-even', 0],
    [1.5, 'half-even', 2],
    [2.5, 'half-even', 2],
    [-2.5, 'half-even', -2],
    [2.9, 'down', 2],
    [-2.9, 'down', -2],
  ])('of %s, rounded %s, are %s', (value, rounding, expected) => {
    expect(cents(value, rounding)).toBe(expected);
  });

  test('are never minus zero, and nothing that whole cents can not hold', () => {
    expect(Object.is(cents(-0.1, 'down'), 0)).toBe(true);
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, 2 ** 53, -1e300])
      expect(() => cents(value, 'half-up')).toThrow(RangeError);
  });

  test.each([
    [0, '0.00'],
    [5, '0.05'],
    [-5, '-0.05'],
    [123_450, '1,234.50'],
    [100_000_000, '1,000,000.00'],
    [-99_999, '-999.99'],
  ])('%s are printed as %s', (amount, text) => {
    expect(formatCents(amount)).toBe(text);
  });

  test('printed, hold every digit', () => {
    fc.assert(
      fc.property(fc.maxSafeInteger(), (amount) => {
        expect(Number(formatCents(amount).replaceAll(/[,.]/g, '')) + 0).toBe(amount + 0);
      }),
    );
  });
});
