import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readMass } from '../../../src/sampling/recovery/mass-typed.ts';
import {
  type DrilledMetre,
  expectedMass,
  recoveryOf,
  recoveryTrend,
} from '../../../src/sampling/recovery/recovery.ts';
import { checkRecovery } from '../../../src/sampling/recovery/recovery-check.ts';
import { NEAR_SPLITTER } from '../../../src/sampling/rod/mismatch.ts';
import { sampling } from '../build.ts';

/** A metre of 139.7 mm hole in 2.7 g/cm³: 41.385 kg. */
function metre(fromM: number, fact: DrilledMetre['fact'], moisturePercent?: number) {
  return recoveryOf({
    fromMm: fromM * 1000,
    toMm: fromM * 1000 + 1000,
    bitMm: 139.7,
    densityGcm3: 2.7,
    fact,
    ...(moisturePercent === undefined ? {} : { moisturePercent }),
  });
}
const codes = (metres: readonly ReturnType<typeof metre>[]): readonly string[] =>
  checkRecovery(sampling(), 'ZQRC004', metres).map((each) => each.code);

test('recovery counts the bulk bag and every split against the mass of the metre', () => {
  const { percent } = metre(4, { bulkG: 30_000, splitG: 3000, duplicateG: 3000 });
  expect(percent).toBeCloseTo((100 * 36_000) / 41_385, 2);
});

test('water is taken off before recovery is counted', () => {
  expect(metre(4, { bulkG: 40_000 }, 10).recoveredG).toBe(36_000);
});

test('a split alone gives no recovery', () => {
  expect(metre(4, { splitG: 3000 }).percent).toBeUndefined();
});

test('the expected mass grows with the square of the bit and straight with length and density', () => {
  fc.assert(
    fc.property(fc.integer({ min: 100, max: 160 }), fc.integer({ min: 100, max: 4000 }), (bit, length) => {
      const one = expectedMass(bit, length, 2.5);
      expect(Math.abs(expectedMass(2 * bit, length, 2.5) - 4 * one)).toBeLessThanOrEqual(3);
      expect(Math.abs(expectedMass(bit, 2 * length, 2.5) - 2 * one)).toBeLessThanOrEqual(2);
    }),
  );
});

test('a bit, length or density of nothing is a fault of the caller', () => {
  expect(() => expectedMass(0, 1000, 2.7)).toThrow(RangeError);
});

describe('what stands out', () => {
  test('a low metre by weight, and a poor one by eye where nothing was weighed', () => {
    expect(codes([metre(4, { bulkG: 20_000 })])).toEqual(['recovery-low']);
    expect(codes([metre(4, { recovery: 'poor' })])).toEqual(['recovery-low']);
    expect(codes([metre(4, { bulkG: 40_000, recovery: 'poor' })])).toEqual([]);
  });

  test('more than the metre holds', () => {
    expect(codes([metre(4, { bulkG: 45_000 })])).toEqual(['recovery-high']);
  });

  test('a calico far from its target, mended only under the driller’s word', () => {
    const found = checkRecovery(sampling(), 'ZQRC004', [metre(4, { splitG: 1500 })]);
    expect(found.map((each) => each.code)).toEqual(['split-off-target']);
    expect(found[0]?.remedy).toContain(NEAR_SPLITTER);
  });

  test('poor metres by eye that follow one another are one finding', () => {
    const poor = (m: number) => metre(m, { recovery: 'poor' });
    const found = checkRecovery(sampling(), 'ZQRC004', [poor(4), poor(5), metre(6, { recovery: 'none' })]);
    expect(found.map((each) => [each.place.fromMm, each.place.toMm, each.problem])).toEqual([
      [4000, 6000, 'Recovery is poor by eye.'],
      [6000, 7000, 'Nothing came up, by eye.'],
    ]);
  });

  test('every wet metre: three in a row are a wet run, fewer are flagged', () => {
    const wet = (m: number) => metre(m, { moisture: 'wet' });
    expect(codes([wet(4), wet(5)])).toEqual(['metres-wet']);
    expect(codes([wet(4), wet(5), metre(6, { moisture: 'moist' }), wet(7)])).toEqual([
      'metres-wet',
      'metres-wet',
    ]);
    expect(checkRecovery(sampling(), 'ZQRC004', [wet(4), wet(5), wet(6)])[0]).toMatchObject({
      code: 'wet-run',
      place: { fromMm: 4000, toMm: 7000 },
    });
  });

  test('a fall with depth, which two odd weights don’t make', () => {
    const falling = Array.from({ length: 40 }, (_, m) => metre(m, { bulkG: 41_385 - 150 * m }));
    expect(recoveryTrend(falling)).toBeCloseTo((-15_000 / 41_385) * 100, 1);
    expect(codes(falling)).toContain('recovery-trend');
    const level = Array.from({ length: 40 }, (_, m) => metre(m, { bulkG: m > 37 ? 30_000 : 40_000 }));
    expect(recoveryTrend(level)).toBe(0);
  });

  test('under ten weighed metres there is no trend', () => {
    expect(recoveryTrend([metre(1, { bulkG: 40_000 }), metre(2, { bulkG: 30_000 })])).toBeUndefined();
  });
});

describe('a mass typed', () => {
  test('is read in kilograms', () => {
    expect(readMass('3.2', 'calico')).toEqual({ ok: true, value: 3200 });
  });

  test('in grams is named, with what to type', () => {
    const read = readMass('3200', 'calico');
    expect(read.ok ? [] : read.findings).toMatchObject([
      { code: 'mass-in-grams', excerpt: '3200', remedy: 'Type kilograms: 3.2' },
    ]);
  });

  test.each(['', 'three', '-3', '45', '3,2'])('as %j is refused', (text) => {
    const read = readMass(text, 'calico');
    expect(read.ok ? [] : read.findings.map((each) => each.code)).toEqual(['mass-unreadable']);
  });
});
