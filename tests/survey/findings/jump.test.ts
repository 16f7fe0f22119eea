import { describe, expect, test } from 'vitest';
import { checkJumps } from '../../../src/survey/checks/jump.ts';
import { surveySettingsOf } from '../../../src/survey/settings.ts';
import { standingShots } from '../../../src/survey/shots/standing-shots.ts';
import { AT, checkedRuns, problemsOf, runOf, rankedStation as station } from '../build.ts';

const check = (...stations: Parameters<typeof checkJumps>[0][number][]) =>
  checkJumps(stations, surveySettingsOf(), AT);

test('a bend sharper than rods bend is a jump', () => {
  expect(problemsOf(check(station(0, 90, -60), station(30, 90, -66)))).toEqual([
    'the direction changes by 6.0° in 30 m; no more than 3.6° is expected',
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

describe('one shot off a line that the others keep', () => {
  const run = (azimuth: number, dip = -60.5) =>
    runOf(
      (
        [
          [30, 91.5, -60.5],
          [60, 92, -60.5],
          [90, azimuth, dip],
          [120, 93.1, -60.5],
          [150, 93.8, -60.5],
        ] as const
      ).map((each) => [...each] as const),
    );
  const of = (one: ReturnType<typeof runOf>) =>
    checkedRuns([one], {}, { drilledM: 180 }).findings.filter(({ code }) => code !== 'survey-shot-gap');

  test('is named alone, with what its digits may have been; its neighbours are good', () => {
    const found = of(run(29.4));
    expect(found.map(({ code, place }) => [code, place.fromMm])).toEqual([['survey-shot-alone', 90_000]]);
    expect(found[0]?.problem).toContain('with two digits swapped its azimuth would be 92.4°, in line');
  });

  test('is named by its dip alike', () => {
    const found = of(run(92.5, -65));
    expect(found.map(({ code }) => code)).toEqual(['survey-shot-alone']);
    expect(found[0]?.problem).toContain('its dip would be -60.5°');
  });

  test('is named without a guess where no two digits explain it', () => {
    expect(of(run(120))[0]?.problem).toMatch(/which agree$/);
  });

  test('leaves the path and all that rests on it', () => {
    const bad = run(29.4);
    const { runs, leftOut } = standingShots([bad], of(bad), AT);
    expect(leftOut).toEqual([{ run: bad.id, depthMm: 90_000, part: 'shot' }]);
    expect(runs[0]?.shots).toHaveLength(4);
  });
});
