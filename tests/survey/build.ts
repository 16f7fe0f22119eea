import type { Finding } from '../../src/finding/finding.ts';
import type { Shot, SurveyRun } from '../../src/hole/direction.ts';
import { azimuth, type North } from '../../src/quantity/azimuth.ts';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import { dip } from '../../src/quantity/dip.ts';
import { stamp } from '../../src/quantity/stamp.ts';
import type { HoleBend } from '../../src/survey/blunders/bends.ts';
import { checkSurvey, type SurveyChecked } from '../../src/survey/check-survey.ts';
import type { Direction } from '../../src/survey/direction.ts';
import type { NorthAngles } from '../../src/survey/norths/norths.ts';
import { type Path, pathThrough, type Station } from '../../src/survey/path/path.ts';
import { type ErrorClass, surveySettingsOf } from '../../src/survey/settings.ts';
import type { RunWithShots } from '../../src/survey/shots/run-with-shots.ts';
import { bestStations, type RankedStation } from '../../src/survey/shots/runs.ts';

/** Places and things for the tests of this room: an invented hole on an invented program. */
export const AT = { hole: 'ZQRC004' };

export const pointing = (azimuthDeg: number, dipDeg: number, north: North = 'grid'): Direction => ({
  azimuth: azimuth(azimuthDeg, north),
  dip: dip(dipDeg),
});

/** A station from metres, azimuth, dip: set at the collar, measured below it. */
export const station = (depthM: number, azimuthDeg: number, dipDeg: number): Station => ({
  ...pointing(azimuthDeg, dipDeg),
  depthMm: depthFromMetres(depthM),
  basis: depthM === 0 ? 'set' : 'measured',
});

/** A path through `[metres, azimuth, dip]`; throws when there is none. */
export function pathOf(...stations: readonly (readonly [number, number, number])[]): Path {
  const built = pathThrough(
    stations.map(([depthM, azimuthDeg, dipDeg]) => station(depthM, azimuthDeg, dipDeg)),
    AT,
  );
  if (!built.ok) throw new Error(built.findings.map((finding) => finding.problem).join('; '));
  return built.value;
}

/** When everything in these tests was done. */
export const WHEN = stamp(Date.UTC(2026, 2, 14, 4), 480);

/** A run of an invented tool: a gyro in open hole, unless said otherwise. */
export const runOf = (
  shots: readonly (readonly [depthM: number, azimuthDeg: number | undefined, dipDeg: number])[],
  said: Partial<SurveyRun> = {},
  id = 'zq1-1',
): RunWithShots => ({
  id,
  run: {
    tool: 'tool 7',
    toolClass: 'north-seeking gyro',
    north: 'true',
    pass: 'in',
    inside: 'open hole',
    toolOffsetMm: 0,
    operator: 'R. Quill',
    at: WHEN,
    rank: 50,
    ...said,
  },
  shots: shots.map(([depthM, azimuthDeg, dipDeg]) => ({
    run: id,
    depthMm: depthFromMetres(depthM),
    ...(azimuthDeg === undefined ? {} : { azimuthDeg }),
    dipDeg,
    at: WHEN,
    by: 'RQ',
  })),
});

/** A run with every shot changed alike. */
export const withShots = (run: RunWithShots, said: Partial<Shot>): RunWithShots => ({
  ...run,
  shots: run.shots.map((shot) => ({ ...shot, ...said })),
});

/** A station that a tool measured (the line-up at the collar), for checks that go by the errors of tools. */
export const rankedStation = (
  depthM: number,
  azimuthDeg: number,
  dipDeg: number,
  toolClass: ErrorClass = depthM === 0 ? 'line-up' : 'north-seeking gyro',
): RankedStation => ({
  ...station(depthM, azimuthDeg, dipDeg),
  toolClass,
  run: toolClass === 'line-up' ? undefined : 'zq1-1',
});

/** What the checks say of runs beside a line-up at 090 grid, -60, where the norths are apart by `angles`. */
export function checkedRuns(
  runs: readonly RunWithShots[],
  angles: NorthAngles = {},
  more: {
    readonly drilledM?: number;
    readonly lineUp?: boolean;
    readonly neighbours?: readonly HoleBend[];
    /** How far the line-up is turned, degrees, and the north that it was recorded from. */
    readonly turnedDeg?: number;
    readonly recorded?: North;
  } = {},
): SurveyChecked {
  const { drilledM = 100, lineUp = true, neighbours = [], turnedDeg = 0, recorded = 'grid' } = more;
  const known = { declinationDeg: 0, convergenceDeg: 0, ...angles };
  const set = { direction: pointing(90 + turnedDeg, -60), angles: known };
  const settings = surveySettingsOf();
  const anglesOf = () => known;
  return checkSurvey({
    place: AT,
    north: 'grid',
    lineUp: lineUp ? { ...set, recorded } : undefined,
    planned: set.direction,
    neighbours,
    runs,
    ranked: bestStations({
      place: AT,
      north: 'grid',
      lineUp: lineUp ? set : undefined,
      runs,
      anglesOf,
      settings,
    }),
    drilledMm: depthFromMetres(drilledM),
    anglesOf,
    fieldOf: () => undefined,
    settings,
  });
}

/** Shots down a straight hole at 090 grid, -60, all of them turned by an angle. */
export const straightRun = (
  turnedDeg: number,
  said: Partial<SurveyRun> = {},
  id = 'zq1-1',
  depths: readonly number[] = [12, 42, 72],
) =>
  runOf(
    depths.map((depthM) => [depthM, 90 + turnedDeg, -60] as const),
    said,
    id,
  );

export const codesOf = (findings: readonly Finding[]) => findings.map((finding) => finding.code);
export const problemsOf = (findings: readonly Finding[]) => findings.map((finding) => finding.problem);
export const remediesOf = (findings: readonly Finding[]) => findings.map((finding) => finding.remedy);
