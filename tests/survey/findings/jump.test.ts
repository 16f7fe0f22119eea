import { expect, test } from 'vitest';
import { checkJumps } from '../../../src/survey/checks/jump.ts';
import { surveySettingsOf } from '../../../src/survey/settings.ts';
import { AT, problemsOf, rankedStation as station } from '../build.ts';

const check = (...stations: Parameters<typeof checkJumps>[0][number][]) =>
  checkJumps(stations, surveySettingsOf(), AT);

test('a bend sharper than rods bend is a jump', () => {
  expect(problemsOf(check(station(0, 90, -60), station(30, 90, -66)))).toEqual([
    'the direction changes by 6.0° in 30 m; 3.6° is the most expected',
  ]);
});

test('a steady bend inside the limit raises nothing', () => {
  expect(check(station(0, 90, -60), station(30, 90, -57.5), station(60, 90, -55))).toEqual([]);
});

test('two readings close together may differ by their noise', () => {
  expect(check(station(27, 90, -60), station(30, 90, -60.9))).toEqual([]);
  expect(check(station(27, 90, -60), station(30, 90, -61.1))).toHaveLength(1);
});

test('a large change of azimuth in a nearly vertical hole is a small change of direction', () => {
  expect(check(station(0, 10, -89.5), station(30, 170, -89.5))).toEqual([]);
});

test("the line-up's own error is allowed for at the first shot", () => {
  // 1.9° in 12 m is well within what a line-up is off; between two shots of one run it is a jump.
  expect(check(station(0, 90, -60), station(12, 90, -58.1))).toEqual([]);
  expect(check(station(30, 90, -60), station(42, 90, -58.1))).toHaveLength(1);
});
