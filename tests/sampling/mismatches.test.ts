import { describe, expect, test } from 'vitest';
import { NEAR_SPLITTER } from '../../src/sampling/mismatch.ts';
import { NO_TRACE } from '../../src/sampling/mismatches/no-trace.ts';
import { MISMATCHES } from '../../src/sampling/mismatches/registry.ts';
import { rodCheck } from '../../src/sampling/rod-check.ts';
import { atCollar, sampling } from './build.ts';
import { drill } from './simulator.ts';
import { SLIPS } from './slips.ts';

const HOLES = 1000;

/** Kinds whose bags are written anew on the ground: the numbers that lay there are not the ones recorded. */
const WRITTEN_ANEW = ['last-holes-bags', 'used-twice', 'transposed-digits', 'foreign', 'void-used'];

describe('a thousand seeded holes, each with a slip, every kind in turn', () => {
  const outcomes = Array.from({ length: HOLES }, (_, seed) =>
    drill(seed, SLIPS[seed % SLIPS.length] ?? 'none'),
  );
  const visible = outcomes.filter((each) => each.visible);

  test('nearly every slip comes to show in the last number or the count, of every kind', () => {
    expect(visible.length).toBeGreaterThan(0.95 * HOLES);
    expect(new Set(visible.map((each) => each.slip))).toEqual(new Set(SLIPS));
  });

  test('whatever shows in the numbers is found at the first rod check at which it shows', () => {
    expect(visible.filter((each) => !each.detected)).toEqual([]);
  });

  test('nine in ten are named rightly after the looks that the check asks for', () => {
    const right = visible.filter((each) => each.namedAfterLooks === each.slip);
    expect(right.length).toBeGreaterThanOrEqual(0.9 * visible.length);
  });

  test.each(SLIPS)('%s is named rightly nine times in ten by itself', (slip) => {
    const those = visible.filter((each) => each.slip === slip);
    const right = those.filter((each) => each.namedAfterLooks === slip);
    expect(right.length).toBeGreaterThanOrEqual(0.9 * those.length);
  });

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

test('on a thousand clean streams nothing is called wrong', () => {
  const alarms = Array.from({ length: HOLES }, (_, seed) => drill(10_000 + seed, 'none').falseAlarms);
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

test('every kind that leaves a trace in the numbers is simulated', () => {
  const kinds = MISMATCHES.map((kind) => kind.code);
  const noTrace = ['duplicate-and-primary-swapped', 'several'];
  expect(kinds.filter((code) => !noTrace.includes(code)).sort()).toEqual([...SLIPS].sort());
});
