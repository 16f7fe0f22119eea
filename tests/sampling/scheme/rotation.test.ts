import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { materialFor, rotated } from '../../../src/sampling/scheme/rotation.ts';
import { SETTINGS, sampling } from '../build.ts';

const names = ['low', 'middle', 'high', 'oxide'];

test('every name comes once a round', () => {
  fc.assert(
    fc.property(fc.string(), fc.nat(500), (seed, round) => {
      const taken = names.map((_, turn) => rotated(seed, names, round * names.length + turn));
      expect([...taken].sort()).toEqual([...names].sort());
    }),
  );
});

test('the order is the same for the same seed, and rounds have orders of their own', () => {
  const turns = (seed: string) => Array.from({ length: 80 }, (_, turn) => rotated(seed, names, turn));
  expect(turns('tea')).toEqual(turns('tea'));
  expect(turns('tea')).not.toEqual(turns('coffee'));
  expect(
    new Set(
      Array.from({ length: 20 }, (_, round) =>
        turns('tea')
          .slice(4 * round, 4 * round + 4)
          .join(),
      ),
    ).size,
  ).toBeGreaterThan(5);
});

test('of nothing there is no turn', () => {
  expect(rotated('tea', [], 3)).toBeUndefined();
});

test('standards come in turn at the numbers kept for them, each as often as the others', () => {
  const lots = Array.from({ length: 30 }, (_, index) => materialFor(sampling(), 'standard', 40 * index));
  for (const lot of ['low', 'middle', 'high'])
    expect(lots.filter((each) => each === lot).length).toBeGreaterThan(5);
});

test('a retired lot takes no more turns', () => {
  const standards = [
    { lot: 'low', sachets: 10, retired: true as const },
    { lot: 'high', sachets: 10 },
  ];
  const project = sampling({ controls: { ...SETTINGS.controls, standards } });
  expect(Array.from({ length: 9 }, (_, index) => materialFor(project, 'standard', 40 * index))).toEqual(
    Array(9).fill('high'),
  );
});

test('a duplicate is made of nothing', () => {
  expect(materialFor(sampling(), 'field duplicate', 13)).toBeUndefined();
});
