import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { depthFromMm } from '../../src/quantity/depth.ts';
import {
  formatInterval,
  type Interval,
  lengthMm,
  overlaps,
  sharedMm,
  within,
} from '../../src/quantity/interval.ts';

const interval = (fromMm: number, toMm: number): Interval => ({
  fromMm: depthFromMm(fromMm),
  toMm: depthFromMm(toMm),
});
const anInterval = fc
  .tuple(fc.nat({ max: 50 }), fc.integer({ min: 1, max: 20 }))
  .map(([from, length]) => interval(from, from + length));

describe('two intervals', () => {
  test('overlap exactly where they share a millimetre, counted one by one', () => {
    fc.assert(
      fc.property(anInterval, anInterval, (a, b) => {
        let shared = 0;
        for (let mm = a.fromMm as number; mm < a.toMm; mm += 1)
          if (mm >= b.fromMm && mm < b.toMm) shared += 1;
        expect(sharedMm(a, b)).toBe(shared);
        expect(overlaps(a, b)).toBe(shared > 0);
        expect(within(a, b)).toBe(shared === lengthMm(a));
      }),
    );
  });

  test('that only touch share nothing', () => {
    expect(overlaps(interval(0, 1000), interval(1000, 2000))).toBe(false);
    expect(sharedMm(interval(0, 1000), interval(1000, 2000))).toBe(0);
  });
});

test('an interval is printed as the trade writes it', () => {
  expect(formatInterval(interval(46_000, 47_500))).toBe('46–47.5');
});
