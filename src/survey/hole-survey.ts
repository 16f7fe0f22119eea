import type { Finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import type { LineUp, Shot, SurveyRun } from '../hole/direction.ts';
import type { Collar, Plan } from '../hole/header.ts';
import { azimuth, type North } from '../quantity/azimuth.ts';
import { type Depth, metres } from '../quantity/depth.ts';
import { dip } from '../quantity/dip.ts';
import { instantMs, type Stamp } from '../quantity/stamp.ts';
import type { Id } from '../record/document.ts';
import type { HoleBend } from './blunders/bends.ts';
import type { Unseen } from './blunders/blunder-words.ts';
import { checkSurvey, type SurveyChecked } from './check-survey.ts';
import { checkFix, fixOf } from './checks/collar-fix-poor.ts';
import { checkCollarOnPlan } from './checks/collar-off-plan.ts';
import { checkDeclinationOfProject } from './checks/declination-off-model.ts';
import { azimuthUnusable } from './checks/magnetic-in-steel.ts';
import { northNotKnown } from './checks/north-not-known.ts';
import { bestCollar, fromCollarTo, plannedCollar, positionOf } from './collar/collars.ts';
import type { Direction } from './direction.ts';
import {
  declinationSlip,
  gyroDrift,
  gyroMisaligned,
  jump,
  lineUpOff,
  misclose,
  northSlip,
  runsDisagree,
} from './findings.ts';
import { toNorth } from './norths/norths.ts';
import { type AnglesHere, anglesAt, type Site } from './norths/site.ts';
import type { PlannedLine } from './path/miss.ts';
import { type Path, pathThrough } from './path/path.ts';
import { ORIGIN } from './path/vector.ts';
import type { SurveySettings } from './settings.ts';
import { type RunWithShots, stands } from './shots/run-with-shots.ts';
import { bestStations, type RankedStations } from './shots/runs.ts';
import { type LeftOut, standingShots } from './shots/standing-shots.ts';

/** What a hole holds about its direction, and what it is read against. */
export interface HoleDirections {
  readonly place: Place;
  readonly plan: Plan | undefined;
  readonly collars: readonly Collar[];
  readonly lineUps: readonly LineUp[];
  readonly runs: readonly (readonly [Id, SurveyRun])[];
  readonly shots: readonly Shot[];
  readonly drilledMm: Depth;
  readonly site: Site;
  /** How the surveyed neighbours of the program bend; none where no one looked. */
  readonly neighbours?: readonly HoleBend[];
  readonly settings: SurveySettings;
}

/** Where a hole goes, as far as its record says, and everything that is wrong with that record. */
export interface HoleSurvey {
  /** The north that everything here is counted from: grid where the project has one. */
  readonly north: North;
  readonly collar: Collar | undefined;
  /** The accepted line-up made last. */
  readonly lineUp: LineUp | undefined;
  readonly planned: PlannedLine | undefined;
  readonly stations: RankedStations['stations'];
  /** Undefined while no direction is known. */
  readonly path: Path | undefined;
  readonly findings: readonly Finding[];
  /** Shots that the path goes past, because a finding names each as wrong. */
  readonly leftOut: readonly LeftOut[];
  /** True where whole runs that the path is made of are likely wrong: it then says nothing of a chance. */
  readonly blundered: boolean;
  /** True where something besides the plan holds the azimuths: an accepted line-up, or two tools that each find north. */
  readonly held: boolean;
  /** Mix-ups of norths that the shots could not show, were they there. */
  readonly unseen: readonly Unseen[];
}

/**
 * The survey of a hole from its record, from scratch. A declination of the project that is off the model's comes first; where the rest is
 * quieter with the model's, it is the root of what the runs show, and only what stays then is said of them.
 */
export function surveyHole(hole: HoleDirections): HoleSurvey {
  const recorded = surveyAsRecorded(hole);
  const wrong = projectDeclination(hole, recorded.collar);
  if (wrong.length === 0) return recorded;
  const byModel = surveyAsRecorded({ ...hole, site: { ...hole.site, declinationDeg: undefined } });
  const { findings, unseen } = byModel.findings.length < recorded.findings.length ? byModel : recorded;
  return { ...recorded, findings: [...wrong, ...findings], unseen };
}

function surveyAsRecorded(hole: HoleDirections): HoleSurvey {
  const { place, site, settings } = hole;
  const collar = bestCollar(hole.collars);
  const north = northOf(hole);
  const at = remembered((when) => anglesHere(site, collar, when, place));
  const lineUp = acceptedLineUp(hole.lineUps);
  const runs = runsOf(hole);
  const rankedOf = (these: readonly RunWithShots[]) =>
    bestStations({
      place,
      north,
      lineUp:
        lineUp === undefined
          ? undefined
          : { direction: directionOfLineUp(lineUp), angles: at(lineUp.at).angles },
      runs: these,
      anglesOf: (run) => at(run.at).angles,
      settings,
    });
  // The checks look at everything that was recorded; the path goes through what they leave.
  const ranked = rankedOf(runs);
  const planned = plannedLine(hole, north, collar);
  const recorded = { north, collar, lineUp, planned };
  const checked = checkedSurvey(hole, { ...recorded, stations: ranked.stations }, runs, ranked, at);
  const standing = standingShots(runs, checked.findings, place);
  const { stations } = standing.leftOut.length === 0 ? ranked : rankedOf(standing.runs);
  const path = stations.length === 0 ? undefined : pathThrough(stations, place);
  return {
    ...recorded,
    stations,
    leftOut: standing.leftOut,
    blundered: isBlundered(checked.findings, stations, runs),
    held: stations.some((one) => one.basis === 'set') || northFinders(standing.runs, settings.steelM) > 1,
    path: path?.ok === true ? path.value : undefined,
    findings: [
      ...(path?.ok === false ? path.findings : []),
      ...checked.findings,
      ...(hole.plan !== undefined && planned === undefined
        ? [northNotKnown(hole.plan.azimuthNorth, north, { ...place, thing: 'plan' })]
        : []),
      ...collarFindings(hole, collar),
      ...fieldFindings(hole, at),
    ],
    unseen: checked.unseen,
  };
}

/** How many tools found north by themselves: the azimuths of each hold those of the others. */
function northFinders(runs: readonly RunWithShots[], steelM: number): number {
  const finding = runs.filter(
    ({ run, shots }) =>
      run.toolClass !== 'gyro aligned at the collar' && !azimuthUnusable(run, steelM) && shots.some(stands),
  );
  return new Set(finding.map(({ run }) => `${run.toolClass} ${run.tool}`)).size;
}

/** Findings that say that whole runs do not point where they were recorded; single shots that are wrong are left out of the path. */
const BLUNDERS: ReadonlySet<string> = new Set(
  [declinationSlip, gyroDrift, gyroMisaligned, lineUpOff, misclose, northSlip, runsDisagree].map(
    ({ code }) => code,
  ),
);

/**
 * True where such a finding is of a run that the path is made of, of its line-up, or where the deepest shot is a jump off the others: which of the two it is
 * from is wrong only the next shot says.
 */
function isBlundered(
  findings: readonly Finding[],
  stations: RankedStations['stations'],
  runs: readonly RunWithShots[],
): boolean {
  const deepestMm = stations.at(-1)?.depthMm;
  if (findings.some(({ code, place }) => code === jump.code && place.toMm === deepestMm)) return true;
  const used = [
    'line-up',
    ...runs.filter(({ id }) => stations.some((one) => one.run === id)).map(({ run }) => run.tool),
  ];
  // Of two runs that disagree the finding names one, and the path may be made of the other.
  return findings.some(
    ({ code, place: { thing } }) =>
      BLUNDERS.has(code) &&
      (code === misclose.code || used.some((tool) => thing === undefined || thing.startsWith(tool))),
  );
}

function checkedSurvey(
  hole: HoleDirections,
  { north, lineUp, planned, stations }: Pick<HoleSurvey, 'north' | 'lineUp' | 'planned' | 'stations'>,
  runs: readonly RunWithShots[],
  ranked: RankedStations,
  at: (when: Stamp) => AnglesHere,
): SurveyChecked {
  const { place, drilledMm, settings, neighbours = [] } = hole;
  const set = stations.find((one) => one.basis === 'set');
  return checkSurvey({
    place,
    north,
    lineUp:
      set === undefined || lineUp === undefined
        ? undefined
        : { direction: set, recorded: lineUp.azimuthNorth, angles: at(lineUp.at).angles },
    planned: planned?.direction,
    neighbours,
    runs,
    ranked,
    drilledMm,
    anglesOf: (run) => at(run.at).angles,
    fieldOf: (run) => at(run.at).field,
    settings,
  });
}

/** The path's north: the grid's where there is one, else the plan's, the line-up's or the first run's. */
function northOf({ site, plan, lineUps, runs }: HoleDirections): North {
  if (site.grid !== undefined) return 'grid';
  return plan?.azimuthNorth ?? acceptedLineUp(lineUps)?.azimuthNorth ?? runs[0]?.[1].north ?? 'true';
}

/** The same answer for the same date, worked out once: a projection costs more than the rest of a survey. */
function remembered(ask: (when: Stamp) => AnglesHere): (when: Stamp) => AnglesHere {
  const known = new Map<Stamp, AnglesHere>();
  return (when) => {
    const answer = known.get(when) ?? ask(when);
    known.set(when, answer);
    return answer;
  };
}

function anglesHere(site: Site, collar: Collar | undefined, when: Stamp, place: Place): AnglesHere {
  const position = collar === undefined ? undefined : positionOf(collar);
  return anglesAt(site, position, collar === undefined ? 0 : metres(collar.elevationMm), when, place);
}

/** The accepted line-up made last: station 0. */
function acceptedLineUp(lineUps: readonly LineUp[]): LineUp | undefined {
  return lineUps
    .filter((one) => one.accepted)
    .sort((a, b) => instantMs(a.at) - instantMs(b.at))
    .at(-1);
}

function directionOfLineUp(lineUp: LineUp): Direction {
  return { azimuth: azimuth(lineUp.azimuthDeg, lineUp.azimuthNorth), dip: dip(lineUp.dipDeg) };
}

function runsOf(hole: HoleDirections): readonly RunWithShots[] {
  return hole.runs.map(([id, run]) => ({ id, run, shots: hole.shots.filter((shot) => shot.run === id) }));
}

/** The plan in the path's north, from the collar in use; undefined without a plan or when its azimuth can't be turned. */
function plannedLine(
  hole: HoleDirections,
  north: North,
  collar: Collar | undefined,
): PlannedLine | undefined {
  const { plan, site, place } = hole;
  if (plan === undefined) return undefined;
  const when = collar?.at;
  const angles = when === undefined ? {} : anglesHere(site, collar, when, place).angles;
  const turned = toNorth(azimuth(plan.azimuthDeg, plan.azimuthNorth), north, angles);
  if (turned === undefined) return undefined;
  const peg = plannedCollar(hole.collars);
  const together = peg !== undefined && collar !== undefined && peg.grid === collar.grid;
  return {
    direction: { azimuth: turned, dip: dip(plan.dipDeg) },
    targetMm: plan.targetMm ?? plan.depthMm,
    from: together ? fromCollarTo(collar, peg) : ORIGIN,
  };
}

function collarFindings(hole: HoleDirections, collar: Collar | undefined): readonly Finding[] {
  if (collar === undefined || collar.rank === 'planned') return [];
  const fix = fixOf(collar);
  const poor = fix === undefined ? [] : checkFix(fix, hole.settings, hole.place);
  if (poor.length > 0) return poor;
  const peg = plannedCollar(hole.collars);
  if (peg === undefined || peg.grid !== collar.grid) return [];
  return checkCollarOnPlan(positionOf(collar), positionOf(peg), hole.settings, hole.place);
}

/** What is to be said of the Earth's field, once, where something in the hole hangs on it. */
function fieldFindings(hole: HoleDirections, at: (when: Stamp) => AnglesHere): readonly Finding[] {
  const magnetic = [
    ...hole.runs.map(([, run]) => run).filter((run) => run.north === 'magnetic'),
    ...hole.lineUps.filter((one) => one.azimuthNorth === 'magnetic'),
  ];
  const all = magnetic.flatMap((one) => at(one.at).findings);
  return all.filter((one, index) => all.findIndex((other) => other.problem === one.problem) === index);
}

/** The declination that the project insists on, beside the model's at the collar: at the last run, else when the collar was recorded. */
function projectDeclination(
  { site, runs, place }: HoleDirections,
  collar: Collar | undefined,
): readonly Finding[] {
  const { declinationDeg } = site;
  if (declinationDeg === undefined || collar === undefined) return [];
  const { field } = anglesHere(site, collar, runs.at(-1)?.[1].at ?? collar.at, place);
  return field === undefined ? [] : checkDeclinationOfProject(declinationDeg, field, place);
}
