import { describe, expect, test } from 'vitest';
import { NEAR_SPLITTER } from '../../src/sampling/rod/mismatch.ts';
import { MISMATCHES } from '../../src/sampling/rod/mismatches/registry.ts';
import { rodCheck } from '../../src/sampling/rod/rod-check.ts';
import { LONG_RUN, runs } from '../support/long-run.ts';
import { atCollar, sampling } from './build.ts';
import { bestFromNumbers, confusion, pairOf, sameNumbers, simulate } from './figures.ts';
import { NO_TRACE } from './no-trace.ts';
import { drill } from './simulator.ts';
import { SLIPS, WITHOUT_TRACE } from './slips.ts';

const HOLES = runs(1000, 200);

/** The first seed of holes that no weight was ever set by. */
const FIRST_SEED = 31_000_000;

/** Kinds whose bags are written again on the ground: the numbers that lay there are not the ones recorded. */
const WRITTEN_ANEW = ['last-holes-bags', 'used-twice', 'transposed-digits', 'foreign', 'spoiled-used'];

describe('seeded holes, each with a slip, every kind in turn', () => {
  const outcomes = simulate(FIRST_SEED, HOLES);
  const visible = outcomes.filter((each) => each.visible);

  test('nearly every slip of a kind that can show in the last number or the count comes to show there', () => {
    const canShow = outcomes.filter((each) => each.slip === 'none' || !WITHOUT_TRACE.includes(each.slip));
    expect(visible.length).toBeGreaterThan(0.95 * canShow.length);
    expect(new Set([...visible.map((each) => each.slip), ...WITHOUT_TRACE])).toEqual(new Set(SLIPS));
  });

  test('whatever shows in the numbers is found at the first rod check at which it shows', () => {
    expect(visible.filter((each) => !each.detected)).toEqual([]);
  });

  test('whatever never shows there is found by a scan of the rod’s bags beside their piles', () => {
    const unseen = outcomes.filter((each) => each.made && !each.visible);
    expect(unseen.length).toBeGreaterThan(0);
    expect(unseen.filter((each) => each.scanned === undefined).map((each) => [each.slip, each.seed])).toEqual(
      [],
    );
  });

  test('nine in ten are named rightly after the looks that the check asks for, about one a mismatch', () => {
    const right = visible.filter((each) => each.namedAfterLooks === each.slip);
    expect(right.length).toBeGreaterThanOrEqual(0.9 * visible.length);
    expect(visible.reduce((sum, each) => sum + (each.looks ?? 0), 0)).toBeLessThan(1.1 * visible.length);
  });

  // The best namer learns from these very holes: of few it knows each by heart.
  if (LONG_RUN)
    test('no namer could name nine in ten from the numbers alone, for different slips give the same numbers', () => {
      expect(bestFromNumbers(outcomes)).toBeLessThan(0.9);
    });

  test('two in three are named rightly from the numbers alone, for different slips give the same numbers', () => {
    const right = visible.filter((each) => each.namedFirst === each.slip);
    // Two slips of the reader give the numbers of slips that are made here, and are likelier than some of those.
    expect(right.length).toBeGreaterThanOrEqual(0.65 * visible.length);
  });

  test('what is often named wrongly from the numbers alone gives the same numbers as what it is named', () => {
    const same = sameNumbers(outcomes).map(([pair]) => pair);
    const often = [...confusion(visible, (each) => each.namedFirst)].flatMap(([slip, counts]) =>
      counts.filter(([named, count]) => named !== slip && count >= 3).map(([named]) => pairOf(slip, named)),
    );
    expect(often.length).toBeGreaterThan(0);
    const made = (pair: string) => pair.split(' = ').every((code) => SLIPS.some((slip) => slip === code));
    expect(often.filter((pair) => made(pair) && !same.includes(pair))).toEqual([]);
  });

  test.each(SLIPS.filter((slip) => !WITHOUT_TRACE.includes(slip)))(
    '%s is named rightly nine times in ten by itself',
    (slip) => {
      const those = visible.filter((each) => each.slip === slip);
      const right = those.filter((each) => each.namedAfterLooks === slip);
      expect(right.length).toBeGreaterThanOrEqual(0.9 * those.length);
    },
  );

  test('one of the ways offered writes down what is really in every calico', () => {
    const mendable = visible.filter(
      (each) => each.namedAfterLooks === each.slip && !WRITTEN_ANEW.includes(each.slip),
    );
    expect(mendable.filter((each) => each.mended !== true)).toEqual([]);
  });

  test('the record as mended holds no fault of its own', () => {
    const faulty = visible.filter((each) => (each.faultsLeft ?? []).length > 0);
    expect(faulty.map((each) => [each.slip, each.seed, each.faultsLeft])).toEqual([]);
  });

  test('no rod before the slip is called wrong', () => {
    expect(outcomes.filter((each) => each.falseAlarms > 0)).toEqual([]);
  });
});

test('on clean streams nothing is called wrong', () => {
  const alarms = Array.from(
    { length: HOLES },
    (_, seed) => drill(FIRST_SEED + HOLES + seed, 'none').falseAlarms,
  );
  expect(alarms.filter((count) => count > 0)).toEqual([]);
});

test('every remedy that takes hands near cyclone, splitter or chute waits for the driller’s word', () => {
  const near = MISMATCHES.filter((kind) => /cyclone|splitter|chute/.test(kind.ground));
  expect(near.length).toBeGreaterThan(0);
  expect(near.filter((kind) => !kind.nearSplitter).map((kind) => kind.code)).toEqual([]);
  expect(NEAR_SPLITTER).toMatch(
    /only when the driller confirms.*rotation is stopped.*air is off and bled.*isolation is done/,
  );
});

test('two bags of a rod swapped are not seen: their numbers and their count are those expected', () => {
  const state = { ...atCollar('ZQ000174'), drilledMm: 6000 };
  expect(rodCheck(sampling(), state, { digits: '179', count: 6 }).agrees).toBe(true);
  expect(NO_TRACE.map((each) => each.slip)).toContain('two bags of one rod swapped');
});

test('every kind is simulated, here or at the second rig, or drilled by hand', () => {
  const kinds = MISMATCHES.map((kind) => kind.code);
  const second = ['last-but-one-read', 'closing-bags-swapped', 'another-bundle'];
  // Metres without return are drilled by hand: tests/sampling/rod/empty-metres.test.ts.
  const byHand = ['kept-number-used', 'rod-above-read', 'count-off'];
  expect(kinds.filter((code) => code !== 'several').sort()).toEqual([...SLIPS, ...second, ...byHand].sort());
});
