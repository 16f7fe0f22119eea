import { describe, expect, test } from 'vitest';
import { kindsIn } from '../../src/check/registry.ts';
import type { Finding } from '../../src/finding/finding.ts';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import { stamp } from '../../src/quantity/stamp.ts';
import { checkAzimuthOnCircle } from '../../src/survey/checks/azimuth-off-circle.ts';
import { checkBackBearing } from '../../src/survey/checks/back-bearing.ts';
import { checkFix } from '../../src/survey/checks/collar-fix-poor.ts';
import { checkCollarOnPlan } from '../../src/survey/checks/collar-off-plan.ts';
import { checkCollarOnProgram } from '../../src/survey/checks/collar-off-program.ts';
import { checkCompassDistances, checkMagneticGround } from '../../src/survey/checks/compass-no-check.ts';
import { checkDeclinationOfProject } from '../../src/survey/checks/declination-off-model.ts';
import { checkDepthSlips } from '../../src/survey/checks/depth-slip.ts';
import { checkDipSlip } from '../../src/survey/checks/dip-slip.ts';
import { checkExpected } from '../../src/survey/checks/expected-off.ts';
import { checkJumps } from '../../src/survey/checks/jump.ts';
import { checkMagneticField } from '../../src/survey/checks/magnetic-field.ts';
import { checkMagneticInSteel } from '../../src/survey/checks/magnetic-in-steel.ts';
import { checkMastDip } from '../../src/survey/checks/mast-dip.ts';
import { checkMisclose } from '../../src/survey/checks/misclose.ts';
import { checkShotBelowDrilled } from '../../src/survey/checks/shot-below-drilled.ts';
import { checkShotGaps } from '../../src/survey/checks/shot-gap.ts';
import { checkShotOrder } from '../../src/survey/checks/shot-order.ts';
import { checkHorizontalField } from '../../src/survey/checks/weak-horizontal-field.ts';
import { expectedLogged } from '../../src/survey/expected/expected-logged.ts';
import * as findings from '../../src/survey/findings.ts';
import { magneticField } from '../../src/survey/norths/declination.ts';
import { gridByCode, gridByProj } from '../../src/survey/norths/grids.ts';
import { mineGridFromPoints } from '../../src/survey/norths/mine-grid.ts';
import { pathThrough } from '../../src/survey/path/path.ts';
import { surveySettingsOf } from '../../src/survey/settings.ts';
import { bestStations } from '../../src/survey/shots/runs.ts';
import { readTypedShot } from '../../src/survey/shots/typed-shot.ts';
import { rowsOfTable } from '../../src/survey/table.ts';
import { SURVEY_CASES } from '../errors/cases/survey.ts';
import { findingsIn } from '../errors/error-case.ts';
import { metresOf, SCHEMA, times } from '../termination/build.ts';
import {
  AT,
  checkedRuns,
  codesOf,
  pointing,
  rankedStation,
  runOf,
  station,
  straightRun,
  WHEN,
  withShots,
} from './build.ts';

const at = depthFromMetres;
const PEG = { eastM: 745_000, northM: 6_500_000 };
const EVERY_10 = [10, 20, 30, 40, 50, 60, 70, 80, 90];
const ALIGNED = { tool: 'gyro 3', toolClass: 'gyro aligned at the collar', north: 'grid' } as const;
const MAGNETIC = { toolClass: 'magnetic', north: 'magnetic' } as const;
const lode = (topM: number) =>
  checkExpected(
    expectedLogged(
      [
        {
          expected: { name: 'lode', fromMm: at(10), seen: { field: 'sulphides', of: 'PYR', atLeast: 2 } },
          top: { earliestMm: at(10), latestMm: at(11) },
          foot: undefined,
        },
      ],
      metresOf([...times(topM, 0), 3]),
      SCHEMA,
    ),
    (topM + 1) * 1000,
    { expectedToleranceM: 5 },
    AT,
  );

/** For each check, what is as near to its error as honest work comes, and must not be called one. */
const HONEST: Readonly<Record<string, () => readonly Finding[]>> = {
  'survey-azimuth-off-circle': () => checkAzimuthOnCircle(360, AT),
  'survey-back-bearing': () => checkBackBearing([station(30, 101, -60)], pointing(90, -60), AT),
  'survey-collar-fix-poor': () =>
    checkFix({ scatterM: 2, fewestSatellites: 9, worstDilution: 1 }, { collarToleranceM: 5 }, AT),
  'survey-collar-off-plan': () =>
    checkCollarOnPlan({ eastM: 744_996, northM: 6_500_003 }, PEG, { collarToleranceM: 5 }, AT),
  'survey-collar-off-program': () =>
    checkCollarOnProgram(
      { eastM: 755_000, northM: 6_510_000 },
      [PEG],
      gridByCode(7850)!,
      { programReachM: 20_000 },
      AT,
    ),
  'survey-compass-blackout': () => checkHorizontalField(2000, AT),
  'survey-compass-caution': () => checkHorizontalField(6000, AT),
  'survey-compass-distances': () =>
    checkCompassDistances(
      [
        { distanceM: 20, meanDeg: 359.4 },
        { distanceM: 30, meanDeg: 1.2 },
      ],
      { compassNearestM: 5, compassAgreementDeg: 2 },
      AT,
    ),
  'survey-compass-magnetic-ground': () => checkMagneticGround(false, AT),
  'survey-declination-off-model': () =>
    checkDeclinationOfProject(magneticFieldAt().declinationDeg + 0.9, magneticFieldAt(), AT),
  'survey-declination-slip': () =>
    checkedRuns([straightRun(-4.1, MAGNETIC)], { declinationDeg: 5.6 }).findings,
  'survey-depth-slip': () =>
    checkDepthSlips(
      straightRun(0, MAGNETIC, 'zq1-1', [12, 42, 66, 102]),
      at(110),
      { firstShotM: 12, shotEveryM: 30 },
      AT,
    ).findings,
  'survey-dip-from-vertical': () => checkDipSlip(-52, -60, AT),
  'survey-dip-upwards': () => checkDipSlip(-0.5, -60, AT),
  'survey-expected-not-seen': () => lode(16),
  'survey-expected-off': () => lode(16),
  'survey-grid-unreadable': () =>
    findingsIn(gridByProj('ours', '+proj=utm +zone=50 +south +ellps=GRS80', {})),
  'survey-gyro-drift': () =>
    checkedRuns([
      straightRun(0.4, ALIGNED, 'zq1-1', EVERY_10),
      straightRun(-0.4, { ...ALIGNED, pass: 'out' }, 'zq1-2', [...EVERY_10].reverse()),
    ]).findings,
  'survey-gyro-misaligned': () =>
    checkedRuns([straightRun(2, ALIGNED), straightRun(0, { tool: 'gyro 2' }, 'zq1-2', EVERY_10)]).findings,
  'survey-jump': () =>
    checkJumps([rankedStation(0, 90, -60), rankedStation(30, 92, -62)], surveySettingsOf(), AT),
  'survey-line-up-off': () =>
    checkedRuns([straightRun(2, MAGNETIC), straightRun(2, { tool: 'gyro 2' }, 'zq1-2', EVERY_10)]).findings,
  'survey-magnetic-dip-sign': () =>
    checkMagneticField(
      withShots(runOf([[30, 88, -60]], MAGNETIC), { magneticDipDeg: -magneticFieldAt().dipDeg - 1.5 }),
      magneticFieldAt(),
      { fieldToleranceNt: 1000, magneticDipToleranceDeg: 1 },
      AT,
    ),
  'survey-magnetic-field': () =>
    checkMagneticField(
      withShots(runOf([[30, 88, -60]], MAGNETIC), { fieldNt: 57_900, magneticDipDeg: -66 }),
      magneticFieldAt(),
      { fieldToleranceNt: 3000, magneticDipToleranceDeg: 4 },
      AT,
    ),
  'survey-magnetic-in-steel': () =>
    checkMagneticInSteel(
      runOf([[30, 88, -60]], { ...MAGNETIC, inside: 'open hole', steelMm: 6000 }),
      { steelM: 6 },
      AT,
    ),
  'survey-magnetic-model-out-of-date': () =>
    magneticField({ latDeg: -30, lonDeg: 121 }, 400, stamp(Date.UTC(2029, 10, 1), 480), AT).findings,
  'survey-mast-dip': () => checkMastDip(-60, -60.5, 0.5, AT),
  'survey-mine-grid-unsound': () =>
    findingsIn(
      mineGridFromPoints(
        { map: PEG, mine: { eastM: 1000, northM: 2000 } },
        { map: { eastM: 745_060, northM: 6_500_000 }, mine: { eastM: 1060.2, northM: 2000 } },
        {},
      ),
    ),
  'survey-misclose': () =>
    checkMisclose(
      runOf([[60, 91, -59]]),
      runOf([[60, 92, -59]], { pass: 'out' }, 'zq1-2'),
      { north: 'true', anglesOf: () => ({}), settings: surveySettingsOf() },
      AT,
    ),
  'survey-north-not-known': () =>
    bestStations({
      place: AT,
      north: 'grid',
      lineUp: undefined,
      runs: [runOf([[30, 90, -60]])],
      anglesOf: () => ({ convergenceDeg: 0.4 }),
      settings: { longestGapM: 40, steelM: 6 },
    }).findings,
  'survey-north-slip': () =>
    checkedRuns([straightRun(0.8, { north: 'grid' }, 'zq1-1', EVERY_10)], { convergenceDeg: 0.8 }).findings,
  'survey-off-scale': () => readTypedShot({ depthM: 0, dipDeg: -90 }, undefined, AT).findings,
  'survey-runs-disagree': () =>
    checkedRuns([straightRun(1.5, MAGNETIC), straightRun(0, { tool: 'gyro 2' }, 'zq1-2', EVERY_10)]).findings,
  'survey-shot-alone': () =>
    checkedRuns([
      runOf([30, 60, 90, 120, 150].map((depth) => [depth, depth === 90 ? 93.4 : 92.4, -60.5] as const)),
    ]).findings,
  'survey-shot-below-drilled': () =>
    checkShotBelowDrilled(runOf([[60, 90, -60]]), at(60), surveySettingsOf(), AT),
  'survey-shot-gap': () => checkShotGaps([0, 12, 52].map(at), at(92), { longestGapM: 40 }, AT),
  'survey-shot-order': () =>
    checkShotOrder(
      runOf(
        [
          [60, 90, -60],
          [30, 90, -60],
        ],
        { pass: 'out' },
      ),
      AT,
    ),
  'survey-stations-unusable': () =>
    findingsIn(pathThrough([station(0, 90, -60), station(30, 90, -60), station(30.1, 91, -60)], AT)),
  'survey-table-unreadable': () =>
    findingsIn(rowsOfTable([['DEPTH ', 'dip']], { depth: 'depth', dip: 'dip' }, { file: 'shots.csv' })),
};

function magneticFieldAt() {
  return magneticField({ latDeg: -30, lonDeg: 121 }, 400, WHEN, AT).field!;
}

describe('every check of directions', () => {
  test.each(kindsIn(findings).map((kind) => [kind.code, kind.title] as const))('%s: %s', async (code) => {
    const slip = SURVEY_CASES.find((each) => each.code === code);
    expect(codesOf(await slip!.find()), 'a case that fires it').toContain(code);
    expect(codesOf(HONEST[code]!()), 'a case that does not').not.toContain(code);
  });

  test('says why it matters, in more words than its title', () => {
    for (const kind of kindsIn(findings)) expect(kind.rationale.length).toBeGreaterThan(kind.title.length);
  });
});
