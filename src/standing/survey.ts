import type { Finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import { headerOf, holeNouns, holeThings, planOf, rowsDown } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { type Depth, depthFromMetres, depthFromMm } from '../quantity/depth.ts';
import { instantMs } from '../quantity/stamp.ts';
import { triOf } from '../quantity/tri.ts';
import { byReference } from '../record/by-reference.ts';
import type { Document } from '../record/document.ts';
import { bendOfHole, type HoleBend } from '../survey/blunders/bends.ts';
import { checkExpected } from '../survey/checks/expected-off.ts';
import {
  type ExpectedHere,
  expectedHere,
  type HazardWarning,
  hazardWarnings,
} from '../survey/expected/expected.ts';
import { type ExpectedLogged, expectedLogged } from '../survey/expected/expected-logged.ts';
import { type HoleDirections, type HoleSurvey, surveyHole } from '../survey/hole-survey.ts';
import { type Site, siteOf } from '../survey/norths/site.ts';
import {
  type ClosestApproach,
  closestApproach,
  distanceFromPlan,
  missAtTarget,
  type PlannedLine,
  type Reach,
  reachOf,
  type SplitMiss,
} from '../survey/path/miss.ts';
import { lastStation, type Path, pathThrough } from '../survey/path/path.ts';
import type { Projection } from '../survey/path/projection.ts';
import {
  type ChanceBasis,
  chanceAtTarget,
  chanceBasis,
  type GrowthPoint,
  growthBelow,
  type Uncertainty,
} from '../survey/path/uncertainty.ts';
import type { LeftOut } from '../survey/shots/standing-shots.ts';
import type { DirectionKnown } from '../termination/evaluate/situation.ts';
import { bitAtLeastMm, headsOf } from './heads.ts';
import { hazardsMetBeside } from './met-beside.ts';
import { rodEndBelow } from './rods.ts';

/** Where a hole goes by its record, and the site it was read at. What is wrong with it is asked of {@link surveyChecksOf}. */
export interface SurveyStanding extends Omit<HoleSurvey, 'findings' | 'unseen'> {
  readonly site: Site;
}

const NO_SITE: Site = { grid: undefined, mineGrid: undefined, declinationDeg: undefined };

/** The place that findings about a hole's directions name. */
export function placeOf(hole: Document): Place {
  return { hole: headerOf(hole).name };
}

/** The grids and the declination of a project; where its grid can't be read there are none, and the survey says so. */
export function siteOfProject(project: Project): Site {
  const site = siteOf(project.settings.survey, { file: 'project.json' });
  return site.ok ? site.value : NO_SITE;
}

/** True of a hole that a line-up is accepted of. */
export function isLinedUp(hole: Document): boolean {
  return holeNouns(hole, 'lineUps').some((each) => each.accepted);
}

/** Everything that a hole's survey is made from, out of its document. */
export function directionsOf(project: Project, hole: Document): HoleDirections {
  return {
    place: placeOf(hole),
    plan: planOf(hole),
    collars: holeNouns(hole, 'collars'),
    lineUps: holeNouns(hole, 'lineUps'),
    runs: holeThings(hole, 'runs'),
    shots: holeNouns(hole, 'shots'),
    drilledMm: headsOf(hole).drilledMm,
    site: siteOfProject(project),
    settings: project.survey,
  };
}

/** The survey of a hole as its document stands. */
export const surveyOf = byReference((project: Project, hole: Document): SurveyStanding => {
  const directions = directionsOf(project, hole);
  const { findings: _findings, unseen: _unseen, ...survey } = surveyHole(directions);
  return { ...survey, site: directions.site };
});

/** How a hole bends by its shots, for its neighbours; undefined where it has too few. */
const bendOf = byReference((project: Project, hole: Document): HoleBend | undefined =>
  bendOfHole(surveyOf(project, hole).stations),
);

/** How the surveyed holes of the program bend, all but the one in hand. */
export function neighbourBends(
  project: Project,
  hole: Document,
  documents: Iterable<Document>,
): readonly HoleBend[] {
  return [...documents]
    .filter((one) => one.kind === 'hole' && one.id !== hole.id)
    .flatMap((one) => bendOf(project, one) ?? []);
}

/** What is wrong with the survey of a hole, and what could not be seen. */
export type SurveyChecks = Pick<HoleSurvey, 'findings' | 'unseen'>;

/** Every doubt about the directions of a hole, beside the holes of its program. A grid that can't be read is among them. */
export function surveyChecksOf(
  project: Project,
  hole: Document,
  documents: Iterable<Document>,
): SurveyChecks {
  return checksBeside(project, directionsOf(project, hole), neighbourBends(project, hole, documents));
}

/** The same of directions that may hold what is not recorded yet. */
export function checksBeside(
  project: Project,
  directions: HoleDirections,
  neighbours: readonly HoleBend[],
): SurveyChecks {
  const site = siteOf(project.settings.survey, { file: 'project.json' });
  const { findings, unseen } = surveyHole({ ...directions, neighbours });
  return { findings: [...(site.ok ? [] : site.findings), ...findings], unseen };
}

/** How a hole comes out at its target by one way of carrying it on below the last shot. */
export interface AtTarget {
  readonly projection: Projection;
  readonly miss: SplitMiss;
  readonly nearest: ClosestApproach;
  /** Probability of passing within the target's radius, 0 to 1; undefined where runs are likely wrong. */
  readonly chance: number | undefined;
  /** How well the hole is known where it is nearest, by the same errors. */
  readonly uncertainty: Uncertainty;
}

/** A hole beside its target. */
export interface TargetStanding {
  readonly targetMm: Depth;
  /** Depth of the last station: below it no one has measured. */
  readonly measuredMm: Depth;
  /** Metres from the last station to the plan, square to it. */
  readonly offPlanM: number;
  /** Straight on, and on the trend. */
  readonly ways: readonly AtTarget[];
  /** What the chances rest on. */
  readonly chanceBasis: ChanceBasis;
  readonly reach: Reach;
  /** One sigma from the last station down to the target; none where it is measured so far. */
  readonly growth: readonly GrowthPoint[];
  /** Shots marked as wrong: none of this rests on them. */
  readonly leftOut: readonly LeftOut[];
}

/** The hole beside its target; undefined without a direction or a plan in the path's north. */
export const targetOf = byReference((project: Project, hole: Document): TargetStanding | undefined => {
  const survey = surveyOf(project, hole);
  const { path, planned, stations, blundered, leftOut } = survey;
  if (path === undefined || planned === undefined) return undefined;
  const { severityLimitPer30m, targetRadiusM, toolErrors } = project.survey;
  const ways = (['straight', 'trend'] as const).map((projection): AtTarget => {
    const { probability, uncertainty } = chanceAtTarget(
      stations,
      planned,
      targetRadiusM,
      toolErrors,
      projection,
    );
    return {
      projection,
      miss: missAtTarget(path, planned, projection),
      nearest: closestApproach(path, planned, projection),
      chance: blundered ? undefined : probability,
      uncertainty,
    };
  });
  return {
    targetMm: planned.targetMm,
    measuredMm: lastStation(path).depthMm,
    offPlanM: distanceFromPlan(planned, { offset: path.end }),
    ways,
    chanceBasis: basisOf(survey),
    reach: reachOf(path, planned, severityLimitPer30m, targetRadiusM),
    growth: growthBelow(stations, planned.targetMm, toolErrors),
    leftOut,
  };
});

/** What a chance rests on, as the survey is: what makes it unknown comes first. */
function basisOf({ blundered, held, leftOut, stations }: SurveyStanding): ChanceBasis {
  if (blundered) return 'shots marked as wrong';
  if (!held) return 'no line-up';
  const basis = chanceBasis(stations);
  return basis === 'shots' && leftOut.length > 0 ? 'shots that are left' : basis;
}

/**
 * What the shots told about the direction, for the termination rules: an entry for each depth of the rig at which shots became
 * known, with everything that was known then. The projected miss is that on the trend: the hole carried on as it goes.
 */
export const directionKnown = byReference((project: Project, hole: Document): readonly DirectionKnown[] => {
  const { planned, stations, blundered } = surveyOf(project, hole);
  if (planned === undefined) return [];
  // The end of a plan is no target: a rule on one ends no hole by it.
  const hasTarget = planOf(hole)?.targetMm !== undefined;
  const known = stations.map((one) => ({
    one,
    atMm: one.run === undefined ? 0 : rigDepthWhenKnown(hole, one.run, one.depthMm),
  }));
  const depths = [...new Set(known.filter(({ one }) => one.run !== undefined).map(({ atMm }) => atMm))];
  return depths
    .sort((a, b) => a - b)
    .flatMap((atMm): readonly DirectionKnown[] => {
      const path = pathThrough(
        known.filter((each) => each.atMm <= atMm).map(({ one }) => one),
        placeOf(hole),
      );
      return path.ok
        ? [
            // No hole is ended on shots that are likely wrong: what they tell is left out.
            blundered
              ? { atMm: depthFromMm(atMm) }
              : directionAt(project, depthFromMm(atMm), path.value, planned, hasTarget),
          ]
        : [];
    });
});

/** Where the rig was when a station of a run became known: at the last rod done before the shot, never above the station. */
function rigDepthWhenKnown(hole: Document, run: string, stationMm: number): number {
  const shot = holeNouns(hole, 'shots').findLast((each) => each.run === run && each.depthMm === stationMm);
  if (shot === undefined) return stationMm;
  const rods = holeNouns(hole, 'rods').filter((rod) => instantMs(rod.at) <= instantMs(shot.at));
  return Math.max(stationMm, ...rods.map((rod) => rod.depthMm));
}

function directionAt(
  project: Project,
  atMm: Depth,
  path: Path,
  planned: PlannedLine,
  hasTarget: boolean,
): DirectionKnown {
  const { severityLimitPer30m, targetRadiusM } = project.survey;
  const offPlanMm = depthFromMetres(distanceFromPlan(planned, { offset: path.end }));
  if (!hasTarget) return { atMm, offPlanMm, noTarget: true };
  return {
    atMm,
    offPlanMm,
    projectedMissMm: depthFromMetres(missAtTarget(path, planned, 'trend').totalM),
    targetReachable: triOf(reachOf(path, planned, severityLimitPer30m, targetRadiusM).within),
  };
}

/** Contacts and zones of the plan, where they should come in the hole as it runs. */
export const expectedOf = byReference((project: Project, hole: Document): readonly ExpectedHere[] => {
  const plan = planOf(hole);
  if (plan?.expects === undefined) return [];
  const survey = surveyOf(project, hole);
  const deepest = Math.max(plan.depthMm, bitAtLeastMm(hole), ...plan.expects.map((one) => one.fromMm));
  // A hole that runs flatter than planned comes to its zones deeper along itself: half as deep again is looked at.
  return expectedHere(
    plan.expects,
    survey.path,
    survey.planned,
    depthFromMm(Math.round((deepest * 1.5) / 1000) * 1000),
  );
});

/** The same, beside the log: where each was logged, and how far off. */
export const expectedLoggedOf = byReference((project: Project, hole: Document): readonly ExpectedLogged[] =>
  expectedLogged(
    expectedOf(project, hole),
    rowsDown(hole).map(([, row]) => row),
    project.schema,
  ),
);

/** What is to be said of contacts and zones logged far from where they should come, or passed and not seen. */
export function expectedFindingsOf(project: Project, hole: Document): readonly Finding[] {
  const { loggedMm } = headsOf(hole);
  return checkExpected(expectedLoggedOf(project, hole), loggedMm, project.survey, placeOf(hole));
}

/**
 * Hazard zones that the bit, or the end of the rod in hand while the hole is drilled, is within the site's stand-off of: those of the plan, and
 * those that the hole it stands for met, which hold the stand-off already.
 */
export function hazardsOf(
  project: Project,
  hole: Document,
  documents: Iterable<Document>,
): readonly HazardWarning[] {
  const { standOffM } = project.settings.hazards;
  const bitMm = bitAtLeastMm(hole);
  const isDrilling = headerOf(hole).state === 'drilling';
  const rodEndMm = isDrilling ? rodEndBelow(hole, bitMm) : bitMm;
  const met = hazardsMetBeside(project, hole, documents).map((expected): ExpectedHere => {
    const foot = { earliestMm: expected.toMm, latestMm: expected.toMm };
    return { expected, top: undefined, foot };
  });
  return [
    ...hazardWarnings(expectedOf(project, hole), bitMm, standOffM, rodEndMm),
    ...hazardWarnings(met, bitMm, 0, rodEndMm),
  ];
}
