import type { Finding } from '../../../src/finding/finding.ts';
import { type Depth, depthFromMetres } from '../../../src/quantity/depth.ts';
import { stamp } from '../../../src/quantity/stamp.ts';
import { checkAzimuthOnCircle } from '../../../src/survey/checks/azimuth-off-circle.ts';
import { checkBackBearing } from '../../../src/survey/checks/back-bearing.ts';
import { checkFix } from '../../../src/survey/checks/collar-fix-poor.ts';
import { checkCollarOnPlan } from '../../../src/survey/checks/collar-off-plan.ts';
import { checkCollarOnProgram } from '../../../src/survey/checks/collar-off-program.ts';
import { checkCompassDistances, checkMagneticGround } from '../../../src/survey/checks/compass-no-check.ts';
import { checkDeclinationOfProject } from '../../../src/survey/checks/declination-off-model.ts';
import { checkDepthSlips } from '../../../src/survey/checks/depth-slip.ts';
import { checkDipSlip } from '../../../src/survey/checks/dip-slip.ts';
import { checkExpected } from '../../../src/survey/checks/expected-off.ts';
import { checkJumps } from '../../../src/survey/checks/jump.ts';
import { checkMagneticField } from '../../../src/survey/checks/magnetic-field.ts';
import { checkMagneticInSteel } from '../../../src/survey/checks/magnetic-in-steel.ts';
import { checkMastDip } from '../../../src/survey/checks/mast-dip.ts';
import { checkMisclose } from '../../../src/survey/checks/misclose.ts';
import { northNotKnown } from '../../../src/survey/checks/north-not-known.ts';
import { checkShotBelowDrilled } from '../../../src/survey/checks/shot-below-drilled.ts';
import { checkShotGaps } from '../../../src/survey/checks/shot-gap.ts';
import { checkShotOrder } from '../../../src/survey/checks/shot-order.ts';
import { checkHorizontalField } from '../../../src/survey/checks/weak-horizontal-field.ts';
import { magneticField } from '../../../src/survey/norths/declination.ts';
import { type Grid, gridByCode, gridByProj } from '../../../src/survey/norths/grids.ts';
import { mineGridFromPoints } from '../../../src/survey/norths/mine-grid.ts';
import { pathThrough } from '../../../src/survey/path/path.ts';
import { surveySettingsOf } from '../../../src/survey/settings.ts';
import { readTypedShot } from '../../../src/survey/shots/typed-shot.ts';
import { rowsOfTable } from '../../../src/survey/table.ts';
import {
  AT,
  checkedRuns,
  pointing,
  rankedStation,
  runOf,
  station,
  straightRun,
  withShots,
} from '../../survey/build.ts';
import { type ErrorCase, findingsIn, given } from '../error-case.ts';

const SETTINGS_FILE = { file: 'project.json', field: 'survey' };
const MAGNETIC = { toolClass: 'magnetic', north: 'magnetic' } as const;
const FIELD = {
  declinationDeg: 1,
  dipDeg: -65.2,
  horizontalNt: 24_000,
  totalNt: 57_000,
  model: 'WMM-2025',
  epoch: 2026.2,
  validTo: '2029-11',
};
const ONE_SHOT = [[30, 88, -60]] as const;
const DOWN = [
  [12, 90, -60],
  [42, 90, -60],
  [32, 90, -60],
] as const;
const PLANNED = { eastM: 745_000, northM: 6_500_000 };

const at = depthFromMetres;
const expectedFound = (loggedTopMm: Depth | undefined, loggedMm: Depth) =>
  checkExpected(
    [
      {
        expected: { name: 'lode', fromMm: at(70) },
        top: { earliestMm: at(70), latestMm: at(73) },
        foot: undefined,
        state: loggedTopMm === undefined ? 'not seen' : 'seen',
        loggedTopMm,
        loggedFootMm: undefined,
        topOffMm: loggedTopMm === undefined ? undefined : loggedTopMm - 70_000,
        footOffMm: undefined,
      },
    ],
    loggedMm,
    { expectedToleranceM: 5 },
    AT,
  );

const READING_CASES: readonly ErrorCase[] = [
  given('survey-azimuth-off-circle', 'an azimuth of 365', () => checkAzimuthOnCircle(365, AT)),
  given('survey-back-bearing', 'an azimuth the other way round', () =>
    checkBackBearing([station(30, 268, -60)], pointing(90, -60), AT),
  ),
  given('survey-dip-upwards', 'a dip of +60', () => checkDipSlip(60, -60, AT)),
  given('survey-dip-from-vertical', 'a dip of 30.5 where -60 is planned', () => checkDipSlip(30.5, -60, AT)),
  given('survey-off-scale', 'a dip of 120', () => {
    const answer = readTypedShot({ depthM: 30, dipDeg: 120 } as never, undefined, AT);
    return answer.findings;
  }),
  given('survey-shot-below-drilled', 'feet for metres', () =>
    checkShotBelowDrilled(
      runOf([[177, 90, -60]]),
      depthFromMetres(60),
      { firstShotM: 12, shotEveryM: 30 },
      AT,
    ),
  ),
  given('survey-shot-gap', 'no shot for 48 m', () =>
    checkShotGaps([0, 12, 60].map(depthFromMetres), depthFromMetres(70), { longestGapM: 40 }, AT),
  ),
  given('survey-shot-order', 'a shot above the one before it', () => checkShotOrder(runOf(DOWN), AT)),
  given('survey-expected-off', 'a lode 25 m too high', () => expectedFound(at(45), at(46))),
  given('survey-expected-not-seen', 'a lode that the log has passed', () => expectedFound(undefined, at(90))),
  given('survey-jump', '6° in a rod string of 30 m', () =>
    checkJumps([rankedStation(0, 90, -60), rankedStation(30, 90, -66)], surveySettingsOf(), AT),
  ),
  given(
    'survey-shot-alone',
    '29.4 typed for 92.4 between shots that agree',
    () =>
      checkedRuns([
        runOf([30, 60, 90, 120, 150].map((depth) => [depth, depth === 90 ? 29.4 : 92.4, -60.5] as const)),
      ]).findings,
  ),
  given('survey-misclose', 'in and out that differ', () =>
    checkMisclose(
      runOf([[60, 91, -59]]),
      runOf([[60, 95, -59]], { pass: 'out' }, 'zq1-2'),
      { north: 'true', anglesOf: () => ({}), settings: surveySettingsOf() },
      AT,
    ),
  ),
  given('survey-magnetic-in-steel', 'a magnetic tool inside rods', () =>
    checkMagneticInSteel(runOf(ONE_SHOT, { ...MAGNETIC, inside: 'rods' }), { steelM: 6 }, AT),
  ),
  given('survey-magnetic-field', 'a field of 58,400 nT', () =>
    checkMagneticField(
      withShots(runOf(ONE_SHOT, MAGNETIC), { fieldNt: 58_400 }),
      FIELD,
      { fieldToleranceNt: 1000, magneticDipToleranceDeg: 1 },
      AT,
    ),
  ),
  given('survey-stations-unusable', 'two stations at one depth', () =>
    findingsIn(pathThrough([station(0, 90, -60), station(30, 90, -60), station(30, 91, -60)], AT)),
  ),
  given('survey-table-unreadable', 'a table without a dip', () =>
    findingsIn(rowsOfTable([['depth', 'azimuth']], { depth: 'depth', dip: 'dip' }, { file: 'shots.csv' })),
  ),
];

const MAGNETIC_RUN = { tool: 'tool 5', toolClass: 'magnetic', north: 'magnetic', pass: 'single' } as const;
const ALIGNED = { tool: 'gyro 3', toolClass: 'gyro aligned at the collar', north: 'grid' } as const;
const EVERY_10 = [10, 20, 30, 40, 50, 60, 70, 80, 90];
/** The findings of one kind: a blunder of a whole run may be named beside its consequences. */
const oneKind = (code: string, find: () => readonly Finding[]) => () =>
  find().filter((each) => each.code === code);

const BLUNDER_CASES: readonly ErrorCase[] = [
  given(
    'survey-declination-slip',
    'a run turned by the declination',
    () => checkedRuns([straightRun(0, MAGNETIC_RUN)], { declinationDeg: 5.6 }).findings,
  ),
  given(
    'survey-north-slip',
    'true azimuths recorded as grid, a gyro beside them',
    oneKind(
      'survey-north-slip',
      () =>
        checkedRuns(
          [
            straightRun(2.4, { tool: 'gyro 2', north: 'grid' }, 'zq1-1', EVERY_10),
            straightRun(2.4, MAGNETIC_RUN, 'zq1-2'),
          ],
          { convergenceDeg: 2.4 },
        ).findings,
    ),
  ),
  given(
    'survey-gyro-misaligned',
    'a gyro 5° off one that finds north',
    () =>
      checkedRuns([
        straightRun(5, ALIGNED, 'zq1-1', EVERY_10),
        straightRun(0, { tool: 'gyro 2' }, 'zq1-2', EVERY_10),
      ]).findings,
  ),
  given(
    'survey-gyro-drift',
    'in and out that part towards the collar',
    () =>
      checkedRuns([
        runOf(
          EVERY_10.map((depthM) => [depthM, 90 + depthM / 30, -60] as const),
          ALIGNED,
        ),
        runOf(
          [...EVERY_10].reverse().map((depthM) => [depthM, 96 - depthM / 30, -60] as const),
          { ...ALIGNED, pass: 'out' },
          'zq1-2',
        ),
      ]).findings,
  ),
  given(
    'survey-runs-disagree',
    'a run 7° off the others',
    () =>
      checkedRuns([straightRun(7, MAGNETIC_RUN), straightRun(0, { tool: 'gyro 2' }, 'zq1-2', EVERY_10)])
        .findings,
  ),
  given(
    'survey-line-up-off',
    'two tools agree, 6° off the line-up',
    () =>
      checkedRuns([straightRun(6, MAGNETIC_RUN), straightRun(6, { tool: 'gyro 2' }, 'zq1-2', EVERY_10)])
        .findings,
  ),
  given(
    'survey-depth-slip',
    '24 for 42',
    () =>
      checkDepthSlips(
        straightRun(0, MAGNETIC_RUN, 'zq1-1', [12, 24, 72, 102]),
        depthFromMetres(110),
        { firstShotM: 12, shotEveryM: 30 },
        AT,
      ).findings,
  ),
  given('survey-magnetic-dip-sign', 'a magnetic dip of 65.0 where -65.2 is expected', () =>
    checkMagneticField(
      withShots(runOf(ONE_SHOT, MAGNETIC), { fieldNt: 57_000, magneticDipDeg: 65 }),
      FIELD,
      { fieldToleranceNt: 1000, magneticDipToleranceDeg: 1 },
      AT,
    ),
  ),
  given('survey-declination-off-model', 'a declination of the wrong sign', () =>
    checkDeclinationOfProject(5.4, { ...FIELD, declinationDeg: -5.6 }, AT),
  ),
];

const PLACE_CASES: readonly ErrorCase[] = [
  given('survey-collar-fix-poor', 'a fix of 3 satellites', () =>
    checkFix({ scatterM: 7, fewestSatellites: 3, worstDilution: 8.4 }, { collarToleranceM: 5 }, AT),
  ),
  given('survey-collar-off-plan', 'a collar 10 m off its peg', () =>
    checkCollarOnPlan({ eastM: 744_990, northM: 6_500_000 }, PLANNED, { collarToleranceM: 5 }, AT),
  ),
  given('survey-collar-off-program', 'east and north swapped', () =>
    checkCollarOnProgram(
      { eastM: 6_500_000, northM: 745_210 },
      [PLANNED],
      gridByCode(7850) as Grid,
      { programReachM: 20_000 },
      AT,
    ),
  ),
  given('survey-compass-distances', 'a compass read at one distance', () =>
    checkCompassDistances(
      [{ distanceM: 20, meanDeg: 90 }],
      { compassNearestM: 20, compassAgreementDeg: 2 },
      AT,
    ),
  ),
  given('survey-compass-magnetic-ground', 'a compass in magnetic ground', () =>
    checkMagneticGround(true, AT),
  ),
  given('survey-compass-blackout', 'a horizontal field of 1,500 nT', () => checkHorizontalField(1500, AT)),
  given('survey-compass-caution', 'a horizontal field of 5,000 nT', () => checkHorizontalField(5000, AT)),
  given('survey-mast-dip', 'crew and clinometer 2° apart', () => checkMastDip(-60, -58, 1, AT)),
  given('survey-north-not-known', 'grid north wanted without a grid', () => [
    northNotKnown('magnetic', 'grid', AT),
  ]),
  given(
    'survey-magnetic-model-out-of-date',
    'a shot of 2035',
    () => magneticField({ latDeg: -30, lonDeg: 121 }, 400, stamp(Date.UTC(2035, 0), 480), AT).findings,
  ),
  given('survey-grid-unreadable', 'degrees for a grid', () =>
    findingsIn(gridByProj('ours', '+proj=longlat', SETTINGS_FILE)),
  ),
  given('survey-mine-grid-unsound', 'two pegs 10 m apart', () =>
    findingsIn(
      mineGridFromPoints(
        { map: PLANNED, mine: { eastM: 1000, northM: 2000 } },
        { map: { eastM: 745_010, northM: 6_500_000 }, mine: { eastM: 1010, northM: 2000 } },
        SETTINGS_FILE,
      ),
    ),
  ),
];

/** Errors of shots, runs, the collar, norths and grids. */
export const SURVEY_CASES: readonly ErrorCase[] = [...READING_CASES, ...BLUNDER_CASES, ...PLACE_CASES];
