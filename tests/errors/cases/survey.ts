import { type Depth, depthFromMetres } from '../../../src/quantity/depth.ts';
import { stamp } from '../../../src/quantity/stamp.ts';
import { checkAzimuthOnCircle } from '../../../src/survey/checks/azimuth-off-circle.ts';
import { checkBackBearing } from '../../../src/survey/checks/back-bearing.ts';
import { checkCollarOnPlan } from '../../../src/survey/checks/collar-off-plan.ts';
import { checkCollarOnProgram } from '../../../src/survey/checks/collar-off-program.ts';
import { checkCompassDistances, checkMagneticGround } from '../../../src/survey/checks/compass-no-check.ts';
import { checkDeclinationSlip } from '../../../src/survey/checks/declination-slip.ts';
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
import { readTypedShot } from '../../../src/survey/shots/typed-shot.ts';
import { rowsOfTable } from '../../../src/survey/table.ts';
import { AT, pointing, runOf, station, withShots } from '../../survey/build.ts';
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
    checkShotBelowDrilled(runOf([[177, 90, -60]]), depthFromMetres(60), AT),
  ),
  given('survey-shot-gap', 'no shot for 48 m', () =>
    checkShotGaps([0, 12, 60].map(depthFromMetres), depthFromMetres(70), { longestGapM: 40 }, AT),
  ),
  given('survey-shot-order', 'a shot above the one before it', () => checkShotOrder(runOf(DOWN), AT)),
  given('survey-expected-off', 'a lode 25 m too high', () => expectedFound(at(45), at(46))),
  given('survey-expected-not-seen', 'a lode that the log has passed', () => expectedFound(undefined, at(90))),
  given('survey-jump', '6° in a rod string of 30 m', () =>
    checkJumps([station(0, 90, -60), station(30, 90, -66)], { jumpPer30m: 3 }, AT),
  ),
  given('survey-misclose', 'in and out that differ', () =>
    checkMisclose(runOf([[60, 91, -59]]), runOf([[60, 95, -59]], { pass: 'out' }), { miscloseDeg: 1 }, AT),
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
  given('survey-declination-slip', 'a run turned by the declination', () =>
    checkDeclinationSlip(
      [0, 1, 2, 3].map((each) => ({ measuredDeg: 94 + each, referenceDeg: 90 + each })),
      4,
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

const PLACE_CASES: readonly ErrorCase[] = [
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
export const SURVEY_CASES: readonly ErrorCase[] = [...READING_CASES, ...PLACE_CASES];
