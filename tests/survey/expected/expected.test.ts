import { describe, expect, test } from 'vitest';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import {
  type Expected,
  expectedHere,
  hazardWarnings,
  NO_CLEARANCE,
  offExpectedMm,
} from '../../../src/survey/expected/expected.ts';
import type { PlannedLine } from '../../../src/survey/path/miss.ts';
import { ORIGIN } from '../../../src/survey/path/vector.ts';
import { pathOf, pointing } from '../build.ts';

const at = depthFromMetres;
const PLAN: PlannedLine = { direction: pointing(90, -60), targetMm: at(100), from: ORIGIN };
const FRESH: Expected = { name: 'top of fresh rock', fromMm: at(40) };
const FIBRE: Expected = { name: 'banded unit', fromMm: at(70), toMm: at(80), hazard: 'fibre' };
const VOID: Expected = { name: 'old stope', fromMm: at(70), hazard: 'void' };

describe('an expected contact', () => {
  test('comes where it was planned in a hole that runs as planned', () => {
    const [one] = expectedHere([FRESH], pathOf([0, 90, -60]), PLAN, at(100));
    expect(one?.top).toEqual({ earliestMm: 40_000, latestMm: 40_000 });
    expect(one?.foot).toBeUndefined();
  });

  test('comes over a range in a hole that runs otherwise: level, or square to the plan', () => {
    const [one] = expectedHere([FRESH], pathOf([0, 90, -50]), PLAN, at(100));
    const level = (40 * Math.sin(Math.PI / 3)) / Math.sin((50 * Math.PI) / 180);
    const square = 40 / Math.cos((10 * Math.PI) / 180);
    expect(one?.top?.latestMm).toBeCloseTo(level * 1000, -1);
    expect(one?.top?.earliestMm).toBeCloseTo(square * 1000, -1);
  });

  test('is not in a hole that never comes there', () => {
    const [one] = expectedHere([FRESH], pathOf([0, 90, -60]), PLAN, at(30));
    expect(one?.top).toBeUndefined();
  });

  test('and a logged one are so far off', () => {
    const range = { earliestMm: at(40), latestMm: at(45) };
    expect([38, 42, 47].map((logged) => offExpectedMm(range, at(logged)))).toEqual([-2000, 0, 2000]);
  });
});

describe('a hazard zone', () => {
  const warnings = (zones: readonly Expected[], drilledM: number, dipDeg = -60) =>
    hazardWarnings(expectedHere(zones, pathOf([0, 90, dipDeg]), PLAN, at(120)), at(drilledM), 12);

  test('is announced at the stand-off from the earliest depth it could come at', () => {
    expect(warnings([FIBRE], 57.9)).toEqual([]);
    const [warning] = warnings([FIBRE], 58);
    expect(warning).toMatchObject({ hazard: 'fibre', earliestMm: 70_000 });
    expect(warning?.text).toBe(
      `FIBRE (banded unit): it may be in the dust from 70 m, the earliest it could come: 12 m below the bit or less. ${NO_CLEARANCE}`,
    );
  });

  test('is announced earlier where the hole runs into it earlier', () => {
    const [warning] = warnings([FIBRE], 56, -70);
    expect(warning?.earliestMm).toBeLessThan(at(65));
  });

  test('is never announced later than planned: a wrong shot may not hide it', () => {
    expect(warnings([FIBRE], 58, -20)).toHaveLength(1);
    expect(warnings([FIBRE], 57.9, -20)).toEqual([]);
  });

  test('stays announced inside and until the stand-off past its latest foot', () => {
    expect(warnings([FIBRE], 75)[0]?.text).toContain('the hole is there now');
    expect(warnings([FIBRE], 92)).toHaveLength(1);
    expect(warnings([FIBRE], 92.1)).toEqual([]);
  });

  test('is left behind by its latest foot, wherever that was planned', () => {
    // A flatter hole comes out of the zone later than planned, a steeper one earlier: neither shortens the warning.
    expect(warnings([FIBRE], 100, -50)).toHaveLength(1);
    expect(warnings([FIBRE], 92, -70)).toHaveLength(1);
    expect(warnings([FIBRE], 96, -70)).toEqual([]);
  });

  test('counts from the earlier of straight on and the trend', () => {
    const steepening = pathOf([0, 90, -60], [30, 90, -63], [60, 90, -66]);
    const [zone] = expectedHere([{ ...FIBRE, fromMm: at(90) }], steepening, PLAN, at(120));
    expect(zone?.top?.earliestMm).toBeLessThan(90_000);
    expect(zone?.top?.latestMm).toBeGreaterThan(zone?.top?.earliestMm ?? 0);
  });

  test('is announced from its planned depth while no direction is known', () => {
    const zones = expectedHere([FIBRE], undefined, undefined, at(120));
    expect(zones).toEqual([{ expected: FIBRE, top: undefined, foot: undefined, blind: true }]);
    expect(hazardWarnings(zones, at(58), 12)).toHaveLength(1);
    expect(hazardWarnings(zones, at(57.9), 12)).toEqual([]);
  });

  test('without a foot stays announced for good', () => {
    expect(warnings([VOID], 119)[0]?.text).toContain('VOID (old stope): the bit may drop');
  });

  test('is what makes a warning: a contact is none', () => {
    expect(warnings([FRESH], 40)).toEqual([]);
  });

  test('says every time that no warning is no clearance', () => {
    expect(NO_CLEARANCE).toContain('No warning is no clearance');
  });
});
