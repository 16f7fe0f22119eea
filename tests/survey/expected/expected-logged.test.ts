import { describe, expect, it } from 'vitest';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { checkExpected } from '../../../src/survey/checks/expected-off.ts';
import type { Expected, ExpectedHere } from '../../../src/survey/expected/expected.ts';
import { expectedLogged } from '../../../src/survey/expected/expected-logged.ts';
import { expectedCells } from '../../../src/survey/expected/expected-words.ts';
import { metresOf, type Said, SCHEMA, times } from '../../termination/build.ts';
import { AT, codesOf, problemsOf } from '../build.ts';

const at = depthFromMetres;
const LODE: Expected = {
  name: 'lode',
  fromMm: at(10),
  toMm: at(14),
  seen: { field: 'sulphides', of: 'PYR', atLeast: 2 },
};

/** The lode where it should come in the hole as it runs, metres. */
const here = (earliestM = 10, latestM = 11, expected = LODE): ExpectedHere => ({
  expected,
  top: { earliestMm: at(earliestM), latestMm: at(latestM) },
  foot: { earliestMm: at(earliestM + 4), latestMm: at(latestM + 4) },
});

const beside = (said: readonly Said[], zone = here()) => expectedLogged([zone], metresOf(said), SCHEMA)[0]!;
const found = (said: readonly Said[], zone = here()) =>
  checkExpected([beside(said, zone)], said.length * 1000, { expectedToleranceM: 5 }, AT);

describe('an expected zone beside the log', () => {
  it('is ahead until the log has passed where its top could come, and then was not seen', () => {
    expect(beside(times(11, 0)).state).toBe('ahead');
    expect(beside(times(12, 0)).state).toBe('not seen');
  });

  it('that was logged is so far off: below its range +, above it −, inside it 0', () => {
    const topOff = (topM: number) => beside([...times(topM, 0), 3]).topOffMm;
    expect([7, 10, 11, 13].map(topOff)).toEqual([-3000, 0, 0, 2000]);
  });

  it('has its foot where the log comes out of it, and none while it may still be in it', () => {
    const inside = beside([...times(10, 0), 3, 3]);
    expect([inside.loggedTopMm, inside.loggedFootMm]).toEqual([10_000, undefined]);
    const through = beside([...times(10, 0), ...times(6, 3), 0]);
    expect([through.loggedFootMm, through.footOffMm]).toEqual([16_000, 1000]);
  });

  it('is not told by a metre without return or with an open question', () => {
    expect(beside([...times(12, 0), 'no return', 'asked']).state).toBe('not seen');
  });

  it('that the plan ties to nothing in the log is not told', () => {
    const { seen: _seen, ...untied } = LODE;
    expect(beside([3, 3], here(10, 11, untied)).state).toBe('no log marker');
  });

  it('without a known way of the hole counts from its planned depth', () => {
    const blind: ExpectedHere = { expected: LODE, top: undefined, foot: undefined };
    expect(beside([...times(12, 0), 3], blind).topOffMm).toBe(2000);
  });

  it('is told in words', () => {
    expect(expectedCells(beside([...times(13, 0), ...times(2, 3), 0]))).toEqual([
      'lode',
      '10 to 14',
      '10–11 to 14–15',
      '13 m, 2.0 m deeper than expected; bottom 15 m, as expected',
    ]);
    expect(expectedCells(beside(times(12, 0)))[3]).toBe('passed, NOT SEEN');
    const away = { expected: LODE, top: undefined, foot: undefined };
    expect(expectedCells(beside([], away))[2]).toBe('not on its way');
    expect(expectedCells(beside([], { ...away, blind: true }))[2]).toBe('not known yet');
  });
});

describe('the finding of a contact that is off', () => {
  it('is raised past the tolerance, above and below', () => {
    expect(codesOf(found([...times(16, 0), 3]))).toEqual([]);
    expect(problemsOf(found([...times(17, 0), 3]))).toEqual([
      'logged at 17 m, 6.0 m deeper than expected (10–11 m)',
    ]);
    expect(codesOf(found([...times(4, 0), 3, ...times(15, 0)]))).toEqual(['survey-expected-off']);
    expect(codesOf(found([...times(5, 0), 3, ...times(15, 0)]))).toEqual([]);
  });

  it('is raised of one not seen once the log is past it by the tolerance', () => {
    expect(codesOf(found(times(16, 0)))).toEqual([]);
    expect(codesOf(found(times(17, 0)))).toEqual(['survey-expected-not-seen']);
  });
});
