import type { Finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import type { SurveyRun } from '../hole/direction.ts';
import type { North } from '../quantity/azimuth.ts';
import type { Depth } from '../quantity/depth.ts';
import type { HoleBend } from './blunders/bends.ts';
import { type BlundersFound, checkBlunders } from './blunders/check-blunders.ts';
import { runAsMeant, stationAsMeant } from './checks/as-meant.ts';
import { checkBackBearing } from './checks/back-bearing.ts';
import { checkDepthSlips } from './checks/depth-slip.ts';
import { checkDipSlip } from './checks/dip-slip.ts';
import { checkJumps } from './checks/jump.ts';
import { checkMagneticField } from './checks/magnetic-field.ts';
import { checkMagneticInSteel } from './checks/magnetic-in-steel.ts';
import { checkMisclose } from './checks/misclose.ts';
import { checkShotBelowDrilled } from './checks/shot-below-drilled.ts';
import { checkShotGaps } from './checks/shot-gap.ts';
import { checkShotOrder } from './checks/shot-order.ts';
import type { Direction } from './direction.ts';
import { magneticFieldOff, magneticInSteel } from './findings.ts';
import type { MagneticField } from './norths/declination.ts';
import type { NorthAngles } from './norths/norths.ts';
import type { SurveySettings } from './settings.ts';
import { placeOfShot, type RunWithShots } from './shots/run-with-shots.ts';
import type { RankedStation, RankedStations } from './shots/runs.ts';
import { standingShots } from './shots/standing-shots.ts';

/** A hole's directions as recorded and as made of them, with what they are compared with. */
export interface SurveyToCheck {
  readonly place: Place;
  readonly north: North;
  /** The line-up in the path's north, with the north it was recorded from and the angles then. */
  readonly lineUp:
    | { readonly direction: Direction; readonly recorded: North; readonly angles: NorthAngles }
    | undefined;
  /** The planned direction in the path's north. */
  readonly planned: Direction | undefined;
  /** How the surveyed neighbours of the program bend. */
  readonly neighbours: readonly HoleBend[];
  readonly runs: readonly RunWithShots[];
  readonly ranked: RankedStations;
  readonly drilledMm: Depth;
  readonly anglesOf: (run: SurveyRun) => NorthAngles;
  /** The Earth's field at the collar and the date of a run, where it is known. */
  readonly fieldOf: (run: SurveyRun) => MagneticField | undefined;
  readonly settings: SurveySettings;
}

/** Findings that say of an azimuth that something other than the Earth draws it. */
const DRAWN: ReadonlySet<string> = new Set([magneticFieldOff.code, magneticInSteel.code]);

/** Findings about the shots of a hole and the path made from them, and the blunders that stay under the noise. */
export interface SurveyChecked {
  readonly findings: readonly Finding[];
  readonly unseen: BlundersFound['unseen'];
}

/** Every finding about the shots of a hole and the path made from them; what names a cause comes first. */
export function checkSurvey(survey: SurveyToCheck): SurveyChecked {
  const { place, ranked, drilledMm, settings } = survey;
  const along = survey.lineUp?.direction ?? survey.planned;
  const stations = ranked.stations;
  const measured = stations.filter((one) => one.basis === 'measured');
  const depths = survey.runs.map((run) => checkDepthSlips(run, drilledMm, settings, place));
  const sound = {
    ...survey,
    runs: depths.map(({ sound: run }) =>
      along === undefined ? run : runAsMeant(run, along, survey.north, survey.anglesOf(run.run)),
    ),
  };
  const meant = along === undefined ? stations : stations.map((one) => stationAsMeant(one, along));
  const blunders = checkBlunders(sound);
  const perRun = survey.runs.flatMap((run) => checkRun(run, survey, along, blunders.gyros));
  // An azimuth that steel or the ground draws is named already: no jump and no other run is held against it.
  const drawn = [...blunders.findings, ...perRun].filter(({ code }) => DRAWN.has(code));
  const undrawn = standingShots(sound.runs, drawn, place);
  const isDrawn = ({ run, depthMm }: RankedStation) =>
    undrawn.leftOut.some((each) => each.run === run && each.depthMm === depthMm);
  const findings = [
    ...ranked.findings,
    ...depths.flatMap((one) => one.findings),
    ...(along === undefined ? [] : checkBackBearing(measured, along, place)),
    ...blunders.findings,
    ...perRun,
    ...checkPairs({ ...sound, runs: undrawn.runs }, blunders.named),
    ...checkShotGaps(
      stationDepths(
        stations,
        sound.runs,
        depths.flatMap(({ meantMm }) => meantMm),
      ),
      drilledMm,
      settings,
      place,
    ),
    ...apartFromNamed(
      meant.filter((one) => !isDrawn(one)),
      blunders.named,
    ).flatMap((each) => checkJumps(each, settings, place, survey.runs)),
  ];
  return { findings, unseen: blunders.unseen };
}

/** Where shots lie, for the gaps between them; those whose depth slipped where they would be: no one surveys again for a slip of the pen. */
function stationDepths(
  stations: readonly RankedStation[],
  sound: readonly RunWithShots[],
  meantMm: readonly Depth[],
): readonly Depth[] {
  const shots = sound.flatMap((run) => run.shots).map((one) => one.depthMm);
  if (meantMm.length > 0) return [...shots, ...meantMm];
  // Dips alone make no station where no azimuth is known at all; they are shots all the same.
  return stations.length > 0 ? stations.map((one) => one.depthMm) : shots;
}

function checkRun(
  run: RunWithShots,
  survey: SurveyToCheck,
  along: Direction | undefined,
  gyros: BlundersFound['gyros'],
): readonly Finding[] {
  const { place, drilledMm, settings } = survey;
  const field = run.run.toolClass === 'magnetic' ? survey.fieldOf(run.run) : undefined;
  return [
    ...checkShotOrder(run, place),
    ...checkShotBelowDrilled(run, drilledMm, settings, place),
    ...(gyros.has(run.id) ? [] : checkMagneticInSteel(run, settings, place)),
    ...(field === undefined || gyros.has(run.id) ? [] : checkMagneticField(run, field, settings, place)),
    ...(along === undefined
      ? []
      : run.shots
          .filter((shot) => shot.rejected === undefined)
          .flatMap((shot) => checkDipSlip(shot.dipDeg, along.dip, placeOfShot(place, run.run, shot)))),
  ];
}

/** Any two runs, in the order recorded; what is named of a run as a whole is not said again of its pairs. */
function checkPairs(survey: SurveyToCheck, named: ReadonlySet<string>): readonly Finding[] {
  const runs = survey.runs.filter((one) => !named.has(one.id));
  return runs.flatMap((first, index) =>
    runs.slice(index + 1).flatMap((second) => checkMisclose(first, second, survey, survey.place)),
  );
}

/** The stretches of a path that are looked at for jumps: where a named run begins or ends, the jump is that of the run. */
function apartFromNamed(
  stations: readonly RankedStation[],
  named: ReadonlySet<string>,
): readonly (readonly RankedStation[])[] {
  const stretches: RankedStation[][] = [];
  stations.forEach((one, index) => {
    const before = stations[index - 1];
    const isNamed = (station: RankedStation) => named.has(station.run ?? 'line-up');
    const cut = before === undefined || (before.run !== one.run && (isNamed(before) || isNamed(one)));
    if (cut) stretches.push([one]);
    else stretches[stretches.length - 1]?.push(one);
  });
  return stretches;
}
