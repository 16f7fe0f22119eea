import { describe, expect, test } from 'vitest';
import { depthFromMm } from '../../../src/quantity/depth.ts';
import {
  checkContaminated,
  checkHygiene,
  flagsOf,
  type HygieneRod,
} from '../../../src/sampling/recovery/hygiene.ts';
import { NEAR_SPLITTER } from '../../../src/sampling/rod/mismatch.ts';

const metre = (m: number) => ({ fromMm: depthFromMm(m * 1000), toMm: depthFromMm(m * 1000 + 1000) });
const rods: readonly HygieneRod[] = [
  { rod: 1, fromMm: 0, toMm: 6000, hygiene: { rod: 'r1', cycloneClean: true, splitterLevel: true } },
  { rod: 2, fromMm: 6000, toMm: 12_000, hygiene: { rod: 'r2', splitterClean: false, splitterLevel: false } },
  { rod: 3, fromMm: 12_000, toMm: 18_000 },
];

test('the first metre of a rod is flagged, and says so where it was not clean', () => {
  expect(flagsOf(metre(0), [], rods)).toEqual(['first of the rod']);
  expect(flagsOf(metre(6), [], rods)).toEqual(['first of the rod', 'not cleaned']);
  expect(flagsOf(metre(7), [], rods)).toEqual([]);
});

test('wet, contaminated and watered metres are flagged from what was seen over them', () => {
  const facts = [
    { ...metre(3), moisture: 'wet', water: 'groundwater' },
    { ...metre(4), contaminated: true, water: 'injected' },
  ] as const;
  expect(flagsOf(metre(3), facts, rods)).toEqual(['wet', 'groundwater']);
  expect(flagsOf(metre(4), facts, rods)).toEqual(['contaminated', 'injected water']);
});

test('an unclean rod is a note whose remedy waits for the driller', () => {
  const found = checkHygiene('ZQRC004', rods, undefined);
  expect(found.map((each) => [each.code, each.severity, each.place.thing])).toEqual([
    ['hygiene-unclean', 'note', 'rod 2'],
  ]);
  expect(found[0]?.problem).toBe('At this rod: splitter not clean, splitter not level.');
  expect(found[0]?.remedy).toContain(NEAR_SPLITTER);
});

describe('where the project looks once in so many rods', () => {
  const unlooked = (everyRods: number) =>
    checkHygiene('ZQRC004', [...rods, { rod: 4, fromMm: 18_000, toMm: 24_000 }], everyRods).filter(
      (each) => each.code === 'hygiene-not-looked',
    );

  test('the rods that no one looked at are one note for the hole', () => {
    expect(unlooked(1).map((each) => [each.severity, each.excerpt, each.problem])).toEqual([
      ['note', '3, 4', '2 of 4 rods have no record of cyclone, splitter and hole; every rod is to have one.'],
    ]);
  });

  test('a rod is overdue where the whole round up to it has no record', () => {
    expect(unlooked(2).map((each) => each.excerpt)).toEqual(['4']);
    expect(unlooked(3)).toEqual([]);
  });
});

test('contaminated metres are found, joined where they follow one another', () => {
  const flagged = (m: number) => ({ ...metre(m), flags: ['contaminated'] as const });
  const found = checkContaminated('ZQRC004', [
    flagged(3),
    flagged(4),
    { ...metre(5), flags: [] },
    flagged(9),
  ]);
  expect(found.map((each) => [each.place.fromMm, each.place.toMm, each.problem])).toEqual([
    [3000, 5000, '2 metres are contaminated.'],
    [9000, 10_000, 'Contaminated.'],
  ]);
});
