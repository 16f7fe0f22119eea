import type { Finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import type { SurveyRun } from '../hole/direction.ts';
import { azimuth, type North } from '../quantity/azimuth.ts';
import type { Depth } from '../quantity/depth.ts';
import { checkBackBearing } from './checks/back-bearing.ts';
import { type AzimuthPair, checkDeclinationSlip } from './checks/declination-slip.ts';
import { checkDipSlip } from './checks/dip-slip.ts';
import { checkJumps } from './checks/jump.ts';
import { checkMagneticField } from './checks/magnetic-field.ts';
import { checkMagneticInSteel } from './checks/magnetic-in-steel.ts';
import { checkMisclose } from './checks/misclose.ts';
import { checkShotBelowDrilled } from './checks/shot-below-drilled.ts';
import { checkShotGaps } from './checks/shot-gap.ts';
import { checkShotOrder } from './checks/shot-order.ts';
import type { Direction } from './direction.ts';
import type { MagneticField } from './norths/declination.ts';
import { type NorthAngles, toNorth } from './norths/norths.ts';
import { pathThrough, surveyedPoint } from './path/path.ts';
import type { SurveySettings } from './settings.ts';
import { placeOfShot, type RunWithShots, stands } from './shots/run-with-shots.ts';
import type { RankedStation, RankedStations } from './shots/runs.ts';

/** A hole's directions as recorded and as made of them, with what they are held against. */
export interface SurveyToCheck {
  readonly place: Place;
  readonly north: North;
  /** The direction the hole should start in, in the path's north: the line-up, else the plan. */
  readonly along: Direction | undefined;
  readonly runs: readonly RunWithShots[];
  readonly ranked: RankedStations;
  readonly drilledMm: Depth;
  readonly anglesOf: (run: SurveyRun) => NorthAngles;
  /** The Earth's field at the collar and the date of a run, where it is known. */
  readonly fieldOf: (run: SurveyRun) => MagneticField | undefined;
  readonly settings: SurveySettings;
}

/** Every finding about the shots of a hole and the path made from them. */
export function checkSurvey(survey: SurveyToCheck): readonly Finding[] {
  const { place, ranked, drilledMm, settings, along } = survey;
  const stations = ranked.stations;
  const measured = stations.filter((one) => one.basis === 'measured');
  return [
    ...ranked.findings,
    ...survey.runs.flatMap((run) => checkRun(run, survey)),
    ...checkPasses(survey),
    ...checkShotGaps(
      stations.map((one) => one.depthMm),
      drilledMm,
      settings,
      place,
    ),
    ...checkJumps(stations, settings, place),
    ...(along === undefined ? [] : checkBackBearing(measured, along, place)),
  ];
}

function checkRun(run: RunWithShots, survey: SurveyToCheck): readonly Finding[] {
  const { place, drilledMm, settings, along } = survey;
  const field = run.run.toolClass === 'magnetic' ? survey.fieldOf(run.run) : undefined;
  const declination = survey.anglesOf(run.run).declinationDeg ?? field?.declinationDeg;
  return [
    ...checkShotOrder(run, place),
    ...checkShotBelowDrilled(run, drilledMm, place),
    ...checkMagneticInSteel(run, settings, place),
    ...(field === undefined ? [] : checkMagneticField(run, field, settings, place)),
    ...(along === undefined
      ? []
      : run.shots
          .filter((shot) => shot.rejected === undefined)
          .flatMap((shot) => checkDipSlip(shot.dipDeg, along.dip, placeOfShot(place, run.run, shot)))),
    ...(declination === undefined || run.run.toolClass !== 'magnetic'
      ? []
      : checkDeclinationSlip(pairsOf(run, survey), declination, { ...place, thing: run.run.tool })),
  ];
}

/** In and out runs of one tool, from one north, taken in pairs. */
function checkPasses(survey: SurveyToCheck): readonly Finding[] {
  const passes = (pass: SurveyRun['pass']) => survey.runs.filter((one) => one.run.pass === pass);
  return passes('in').flatMap((inRun) =>
    passes('out')
      .filter((out) => out.run.tool === inRun.run.tool && out.run.north === inRun.run.north)
      .flatMap((out) => checkMisclose(inRun, out, survey.settings, survey.place)),
  );
}

/** The azimuths of a run beside those of the path without it; where no other run reaches, beside the direction it was set in. */
function pairsOf(run: RunWithShots, survey: SurveyToCheck): readonly AzimuthPair[] {
  const others = survey.ranked.stations.filter((one) => one.run !== run.id);
  const path = pathThrough(others, survey.place);
  const angles = survey.anglesOf(run.run);
  return run.shots.filter(stands).flatMap((shot) => {
    const measured = toNorth(azimuth(shot.azimuthDeg ?? 0, run.run.north), survey.north, angles);
    const reference = path.ok ? surveyedPoint(path.value, shot.depthMm) : undefined;
    const expected = reference ?? (hasRuns(others) ? undefined : survey.along);
    return measured === undefined || expected === undefined
      ? []
      : [{ measuredDeg: measured.deg, referenceDeg: expected.azimuth.deg }];
  });
}

function hasRuns(stations: readonly RankedStation[]): boolean {
  return stations.some((one) => one.run !== undefined);
}
