import { describe, expect, test } from 'vitest';
import { kindsIn } from '../../src/check/registry.ts';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import { checkSurvey } from '../../src/survey/check-survey.ts';
import * as findings from '../../src/survey/findings.ts';
import { surveySettingsOf } from '../../src/survey/settings.ts';
import type { RunWithShots } from '../../src/survey/shots/run-with-shots.ts';
import { bestStations } from '../../src/survey/shots/runs.ts';
import { AT, codesOf, pointing, problemsOf, runOf } from './build.ts';

const SETTINGS = surveySettingsOf();

function check(runs: readonly RunWithShots[], drilledM = 100, declinationDeg = 0) {
  const anglesOf = () => ({ declinationDeg, convergenceDeg: 0 });
  const lineUp = { direction: pointing(90, -60), angles: {} };
  const ranked = bestStations({
    place: AT,
    north: 'grid',
    lineUp,
    runs,
    anglesOf,
    settings: SETTINGS,
  });
  return checkSurvey({
    place: AT,
    north: 'grid',
    along: lineUp.direction,
    runs,
    ranked,
    drilledMm: depthFromMetres(drilledM),
    anglesOf,
    fieldOf: () => undefined,
    settings: SETTINGS,
  });
}

const DOWN = [
  [30, 90, -60],
  [60, 90.5, -59.5],
  [90, 91, -59],
] as const;

describe('the survey of a hole', () => {
  test('that is in order raises nothing', () => {
    expect(check([runOf(DOWN)])).toEqual([]);
  });

  test('names a slip of every kind at once', () => {
    const run = runOf([
      [30, 271, -60],
      [25, 90, 60],
      [200, 90, -60],
    ]);
    expect(new Set(codesOf(check([run])))).toEqual(
      new Set([
        'survey-shot-order',
        'survey-shot-below-drilled',
        'survey-dip-upwards',
        'survey-back-bearing',
        'survey-jump',
        'survey-shot-gap',
      ]),
    );
  });

  test('tells a declination put in twice by the line-up, and by a better run', () => {
    const twice = runOf(
      [
        [20, 90, -60],
        [40, 90.2, -60],
        [60, 90.1, -60],
      ],
      { toolClass: 'magnetic', north: 'magnetic', rank: 10 },
      'zq1-1',
    );
    const problem = 'the run is turned by about the declination: it was likely applied twice';
    expect(problemsOf(check([twice], 70, 4))).toContain(problem);
    const gyro = runOf(DOWN, { rank: 80 }, 'zq1-2');
    expect(problemsOf(check([twice, gyro], 100, 4))).toContain(problem);
  });

  test('pairs an in run with the out run of the same tool', () => {
    const back = runOf(
      [...DOWN].reverse().map(([depth, bearing, dip]) => [depth, bearing + 4, dip] as const),
      { pass: 'out', rank: 40 },
      'zq1-2',
    );
    expect(codesOf(check([runOf(DOWN), back]))).toEqual(['survey-misclose']);
    expect(check([runOf(DOWN), { ...back, run: { ...back.run, tool: 'tool 8' } }])).toEqual([]);
  });
});

test('every kind of finding has a code of its own, a reason and a title', () => {
  const codes = kindsIn(findings).map((kind) => kind.code);
  expect(new Set(codes).size).toBe(codes.length);
  for (const kind of kindsIn(findings)) {
    expect(kind.code).toMatch(/^survey-[a-z]+(-[a-z]+)*$/);
    expect(kind.title).toMatch(/\.$/);
    expect(kind.rationale.length).toBeGreaterThan(60);
  }
});
