import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LineUp } from '../../src/hole/direction.ts';
import type { Collar, Plan } from '../../src/hole/header.ts';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import { stamp } from '../../src/quantity/stamp.ts';
import { bestCollar } from '../../src/survey/collar/collars.ts';
import { type HoleDirections, surveyHole } from '../../src/survey/hole-survey.ts';
import { siteOf } from '../../src/survey/norths/site.ts';
import { closestApproach, missAtTarget, reachOf } from '../../src/survey/path/miss.ts';
import { pathByMetre } from '../../src/survey/path/projection.ts';
import { chanceAtTarget } from '../../src/survey/path/uncertainty.ts';
import { brailleLines } from '../../src/survey/pictures/braille.ts';
import { sectionPicture } from '../../src/survey/pictures/picture.ts';
import { surveySettingsOf } from '../../src/survey/settings.ts';
import { runs } from '../support/long-run.ts';
import { AT, codesOf, problemsOf, runOf, WHEN } from './build.ts';

const at = depthFromMetres;
const later = stamp(Date.UTC(2026, 2, 15), 480);

const site = (() => {
  const read = siteOf({ grid: { epsg: 7850 } }, { file: 'project.json' });
  if (!read.ok) throw new Error('no site');
  return read.value;
})();

const collar = (rank: Collar['rank'], eastM: number, when = WHEN): Collar => ({
  rank,
  eastingMm: eastM * 1000,
  northingMm: 6_500_000_000,
  elevationMm: 400_000,
  grid: 'GDA2020 / MGA zone 50',
  source: 'an invented source',
  at: when,
  by: 'RQ',
});

const lineUp = (said: Partial<LineUp>): LineUp => ({
  azimuthDeg: 90,
  azimuthNorth: 'grid',
  dipDeg: -60,
  way: 'sight pegs',
  accepted: true,
  at: WHEN,
  by: 'RQ',
  ...said,
});

const PLAN: Plan = { azimuthDeg: 90, azimuthNorth: 'grid', dipDeg: -60, depthMm: at(120), targetMm: at(100) };

const HOLE: HoleDirections = {
  place: AT,
  plan: PLAN,
  collars: [collar('planned', 745_000)],
  lineUps: [lineUp({})],
  runs: [],
  shots: [],
  drilledMm: at(30),
  site,
  settings: surveySettingsOf(),
};

describe('a declination of the project with the wrong sign', () => {
  const model = surveyHole({
    ...HOLE,
    collars: [collar('surveyed', 745_000)],
    runs: [['zq1-1', runOf([], { toolClass: 'magnetic', north: 'magnetic' }).run]],
  });
  const far = { ...site, declinationDeg: 9.84 };
  const run = (azimuthDeg: number) =>
    runOf(
      [12, 42, 72].map((depth) => [depth, azimuthDeg, -60] as const),
      {
        toolClass: 'magnetic',
        north: 'magnetic',
      },
    );
  const hole = (azimuthDeg: number): HoleDirections => {
    const one = run(azimuthDeg);
    return {
      ...HOLE,
      collars: [collar('surveyed', 745_000)],
      site: far,
      runs: [[one.id, one.run]],
      shots: one.shots,
      drilledMm: at(80),
    };
  };

  test('comes first, and what it brings about in a good run is not blamed on the run', () => {
    expect(model.findings).toEqual([]);
    // A declination of about 0 at the place: magnetic north of a line along 090 grid, by the convergence alone.
    const byModel = surveyHole({ ...hole(90), site });
    const good = 90 - (byModel.stations[1]!.azimuth.deg - 90);
    expect(codesOf(surveyHole({ ...hole(good), site }).findings)).toEqual([]);
    const doubted = surveyHole(hole(good));
    expect(codesOf(doubted.findings)).toEqual(['survey-declination-off-model']);
  });

  test('does not excuse a run that is off by the model too', () => {
    const codes = codesOf(surveyHole(hole(70)).findings);
    expect(codes[0]).toBe('survey-declination-off-model');
    expect(codes.length).toBeGreaterThan(1);
  });
});

describe('the collar in use', () => {
  test('is the best rank there is, however late a poorer one came in', () => {
    const all = [collar('surveyed', 1), collar('handheld', 2, later), collar('planned', 3, later)];
    expect(bestCollar(all)?.rank).toBe('surveyed');
    expect(bestCollar([])).toBeUndefined();
  });

  test('of two of one rank is the later', () => {
    expect(bestCollar([collar('handheld', 1), collar('handheld', 2, later)])?.eastingMm).toBe(2000);
  });
});

describe('the survey of a hole', () => {
  test('with a line-up alone runs straight from it', () => {
    const survey = surveyHole(HOLE);
    expect(survey.path?.stations).toHaveLength(1);
    expect(survey.north).toBe('grid');
    expect(survey.findings).toEqual([]);
  });

  test('takes the accepted line-up made last', () => {
    const survey = surveyHole({
      ...HOLE,
      lineUps: [
        lineUp({ azimuthDeg: 91, at: later }),
        lineUp({}),
        lineUp({ azimuthDeg: 97, accepted: false, at: later }),
      ],
    });
    expect(survey.lineUp?.azimuthDeg).toBe(91);
  });

  test('turns magnetic and true azimuths to the grid by the date and the collar', () => {
    const run = runOf([[30, 90, -60]]);
    const survey = surveyHole({ ...HOLE, runs: [[run.id, run.run]], shots: run.shots });
    // Convergence there is about -1.35° (grid north west of true), so a true 90° is about 91.35° grid.
    expect(survey.stations[1]?.azimuth).toMatchObject({ north: 'grid', deg: expect.closeTo(91.35, 1) });
  });

  test('recomputes by a surveyed collar, which measures the plan from where it is', () => {
    const survey = surveyHole({
      ...HOLE,
      collars: [collar('planned', 745_000), collar('surveyed', 745_008, later)],
    });
    expect(survey.planned?.from).toEqual({ north: 0, east: -8, down: 0 });
    expect(codesOf(survey.findings)).toEqual(['survey-collar-off-plan']);
  });

  test('does not set a collar of one grid against a peg of another', () => {
    const survey = surveyHole({
      ...HOLE,
      collars: [{ ...collar('planned', 1000), grid: 'mine grid' }, collar('surveyed', 745_008, later)],
    });
    expect(survey.planned?.from).toEqual({ north: 0, east: 0, down: 0 });
    expect(survey.findings).toEqual([]);
  });

  test('without a grid is counted from the north of its plan', () => {
    const survey = surveyHole({
      ...HOLE,
      plan: { ...PLAN, azimuthNorth: 'magnetic' },
      lineUps: [lineUp({ azimuthNorth: 'magnetic' })],
      site: { grid: undefined, mineGrid: undefined, declinationDeg: undefined },
    });
    expect(survey.north).toBe('magnetic');
    expect(survey.path).toBeDefined();
    expect(survey.findings).toEqual([]);
  });

  test('that can not turn its plan says so and goes on', () => {
    const survey = surveyHole({ ...HOLE, plan: { ...PLAN, azimuthNorth: 'true' }, collars: [] });
    expect(survey.planned).toBeUndefined();
    expect(problemsOf(survey.findings)[0]).toContain(
      "azimuths from true north can't be turned to grid north",
    );
    expect(survey.path).toBeDefined();
  });

  test('with nothing recorded has no path and no fault', () => {
    const survey = surveyHole({
      ...HOLE,
      plan: undefined,
      collars: [],
      lineUps: [],
      drilledMm: at(0),
    });
    expect(survey.path).toBeUndefined();
    expect(survey.findings).toEqual([]);
  });

  test('says once that no magnetic model covers the date, where something magnetic hangs on it', () => {
    const when = stamp(Date.UTC(2031, 0, 1), 480);
    const run = runOf([[30, 90, -60]], { at: when, toolClass: 'magnetic', north: 'magnetic' });
    const hole = { ...HOLE, runs: [[run.id, run.run]] as const, shots: run.shots };
    const codes = codesOf(surveyHole(hole).findings);
    expect(codes.filter((code) => code === 'survey-magnetic-model-out-of-date')).toHaveLength(1);
    expect(codes).toContain('survey-north-not-known');
    const gyro = { ...run.run, toolClass: 'north-seeking gyro', north: 'true' } as const;
    expect(codesOf(surveyHole({ ...hole, runs: [[run.id, gyro]] }).findings)).toEqual([]);
  });
});

test('whatever shots a file can hold, everything made of them is finite numbers or findings, never a throw', () => {
  const anyShot = fc.tuple(
    fc.integer({ min: 0, max: 300 }),
    fc.option(fc.double({ min: 0, max: 360, maxExcluded: true, noNaN: true }), { nil: undefined }),
    fc.oneof(fc.double({ min: -90, max: 90, noNaN: true }), fc.constantFrom(-90, 0, 90)),
  );
  const anyRun = fc.record({
    shots: fc.array(anyShot, { maxLength: 12 }),
    toolClass: fc.constantFrom('magnetic', 'gyro aligned at the collar', 'north-seeking gyro'),
    north: fc.constantFrom('true', 'magnetic', 'grid', 'mine-grid'),
    pass: fc.constantFrom('in', 'out', 'single'),
    inside: fc.constantFrom('rods', 'open hole'),
    rank: fc.integer({ min: 0, max: 3 }),
  });
  fc.assert(
    fc.property(fc.array(anyRun, { maxLength: 3 }), fc.boolean(), (anyRuns, hasLineUp) => {
      const runs = anyRuns.map(({ shots, ...said }, index) => runOf(shots, said, `zq1-${index}`));
      const survey = surveyHole({
        ...HOLE,
        lineUps: hasLineUp ? HOLE.lineUps : [],
        runs: runs.map((one) => [one.id, one.run] as const),
        shots: runs.flatMap((one) => one.shots),
      });
      const { path, planned } = survey;
      if (path === undefined || planned === undefined) return;
      const points = pathByMetre(path, at(120), 'trend');
      const numbers = [
        ...points.flatMap(({ offset, dip, azimuth }) => [
          offset.north,
          offset.east,
          offset.down,
          dip,
          azimuth.deg,
        ]),
        missAtTarget(path, planned, 'trend').totalM,
        closestApproach(path, planned, 'trend').distanceM,
        chanceAtTarget(survey.stations, planned, 10, HOLE.settings.toolErrors, 'straight').probability,
      ];
      expect(numbers.every(Number.isFinite)).toBe(true);
      expect(reachOf(path, planned, 3, 10).severityPer30m).toBeGreaterThanOrEqual(0);
      const drawing = sectionPicture({
        path,
        plan: planned,
        plannedMm: undefined,
        drilledMm: at(60),
        expected: [],
      });
      expect(brailleLines(drawing, 40, 12).length).toBeGreaterThan(2);
    }),
    { numRuns: runs(200) },
  );
});
