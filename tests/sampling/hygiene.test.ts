import { expect, test } from 'vitest';
import { depthFromMm } from '../../src/quantity/depth.ts';
import { checkHygiene, flagsOf, type HygieneRod } from '../../src/sampling/hygiene.ts';
import { NEAR_SPLITTER } from '../../src/sampling/mismatch.ts';

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

test('a rod nobody looked at is a note, an unclean one a warning that waits for the driller', () => {
  const found = checkHygiene('ZQRC004', rods);
  expect(found.map((each) => [each.code, each.severity, each.place.thing])).toEqual([
    ['hygiene-unclean', 'warning', 'rod 2'],
    ['hygiene-not-looked', 'note', 'rod 3'],
  ]);
  expect(found[0]?.problem).toBe('At this rod: splitter not clean, splitter not level.');
  expect(found[0]?.remedy).toContain(NEAR_SPLITTER);
});
