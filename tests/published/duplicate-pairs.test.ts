import { expect, test } from 'vitest';
import {
  pairVariation,
  relativeDifference,
  rootMeanSquareVariation,
} from '../../src/sampling/laboratory/pairs.ts';

// Derived outside the project from the formulas of Stanley & Lawie 2007 (Exploration and Mining Geology 16; form from memory):
// relative difference 100·|a−b|/mean, coefficient of variation of a pair 100·√2·|a−b|/(a+b), average as root mean square.
const PAIRS: readonly (readonly [number, number, number, number])[] = [
  [1.0, 1.1, 9.5238095238, 6.734350297],
  [0.52, 0.48, 8.0, 5.6568542495],
  [2.4, 2.0, 18.1818181818, 12.8564869307],
  [0.1, 0.12, 18.1818181818, 12.8564869307],
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: a figure of the source, to its printed digits.
  [5.05, 4.95, 2.0, 1.4142135624],
  [0.75, 0.75, 0.0, 0.0],
  [1.8, 1.2, 40.0, 28.2842712475],
  [3.3, 3.6, 8.6956521739, 6.148754619],
];

test.each(PAIRS)('the pair %d, %d differs by %d %% and varies by %d %%', (a, b, difference, variation) => {
  expect(relativeDifference({ a, b })).toBeCloseTo(difference, 9);
  expect(pairVariation({ a, b })).toBeCloseTo(variation, 9);
});

test('the eight pairs vary by 12.4887 % on the root mean square', () => {
  expect(rootMeanSquareVariation(PAIRS.map(([a, b]) => ({ a, b })))).toBeCloseTo(12.4886807234, 9);
});
