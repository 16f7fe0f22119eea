import type { Finding } from '../finding/finding.ts';
import { recordCollar, recordLineUp } from '../hole/commands/direction.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import type { LineUp } from '../hole/direction.ts';
import { isOver } from '../hole/header.ts';
import { headerOf, holeNouns, planOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { type Azimuth, azimuth, degreesBetween, formatAzimuth } from '../quantity/azimuth.ts';
import { metres } from '../quantity/depth.ts';
import { type Dip, dip, formatDip } from '../quantity/dip.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { bitAtLeastMm } from '../standing/heads.ts';
import { placeOf, siteOfProject } from '../standing/survey.ts';
import { checkMastDip } from '../survey/checks/mast-dip.ts';
import { northNotKnown } from '../survey/checks/north-not-known.ts';
import { bestCollar, positionOf } from '../survey/collar/collars.ts';
import { assessCompass, type CompassAnswer, type CompassReading } from '../survey/collar/compass.ts';
import { assessLineUp, type LineUpAnswer } from '../survey/collar/line-up.ts';
import type { Direction } from '../survey/direction.ts';
import { toNorth } from '../survey/norths/norths.ts';
import { type AnglesHere, anglesAt } from '../survey/norths/site.ts';
import { type CollarTaken, collarThing } from './collar-taken.ts';

/** What was read at the rig in the order of work, as far as it has been. Nothing of it is recorded until it is decided on. */
export interface LineUpTaken {
  readonly cautionsReadBy?: string;
  readonly permissionBy?: string;
  readonly way?: LineUp['way'];
  /** By the pegs or the device: the mast's azimuth as read, with its north. */
  readonly azimuth?: Azimuth;
  readonly compass: readonly CompassReading[];
  readonly crewDip?: Dip;
  readonly clinometerDip?: Dip;
  readonly collar?: CollarTaken;
}

/** The planned direction at the collar today, and the angles between the norths there. */
export interface PlannedHere extends AnglesHere {
  readonly planned: Direction;
  /** What a compass should read looking along the hole; undefined where the declination is not known. */
  readonly magnetic: Azimuth | undefined;
  /** Depth of the target along the hole, metres. */
  readonly targetM: number;
}

/** The planned direction of a hole, at the best collar there is and the date of `at`; undefined for a hole without a plan. */
export function plannedHere(project: Project, hole: Document, at: Stamp): PlannedHere | undefined {
  const plan = planOf(hole);
  if (plan === undefined) return undefined;
  const collar = bestCollar(holeNouns(hole, 'collars'));
  const here = anglesAt(
    siteOfProject(project),
    collar === undefined ? undefined : positionOf(collar),
    collar === undefined ? 0 : metres(collar.elevationMm),
    at,
    placeOf(hole),
  );
  const planned = { azimuth: azimuth(plan.azimuthDeg, plan.azimuthNorth), dip: dip(plan.dipDeg) };
  return {
    ...here,
    planned,
    magnetic: toNorth(planned.azimuth, 'magnetic', here.angles, here.field?.epoch),
    targetM: metres(plan.targetMm ?? plan.depthMm),
  };
}

/** A line-up as read, compared with the plan. */
export interface LineUpStanding {
  /** The direction as set: by the pegs, the device or the compass, and the clinometer (the crew's gauge without one). */
  readonly measured: Direction | undefined;
  /** Its azimuth as it was read, from the north of the way it was set. */
  readonly set: Azimuth | undefined;
  /** Undefined while something is missing, or the two norths can't be brought together. */
  readonly answer: LineUpAnswer | undefined;
  readonly compass: CompassAnswer | undefined;
  /** What the compass makes of the azimuth, in the plan's north. */
  readonly compassAzimuth: Azimuth | undefined;
  /** Readings that disagree, in words: they are read again before anything is asked of the driller. */
  readonly disagree: readonly string[];
  readonly findings: readonly Finding[];
}

/**
 * True where the hole is drilled below its line-up, or over: the rig is on it with rods in the ground, and no one asks for it to be moved.
 */
export function isPastLineUp(hole: Document): boolean {
  const { logFromMm, state } = headerOf(hole);
  return isOver(state) || bitAtLeastMm(hole) > logFromMm;
}

/** Holds what was read against the plan. A compass beside pegs or a device is a check; alone it has to stand by itself. */
export function lineUpStanding(
  project: Project,
  hole: Document,
  taken: LineUpTaken,
  here: PlannedHere,
): LineUpStanding {
  const { survey } = project;
  const place = placeOf(hole);
  const { north } = here.planned.azimuth;
  const alone = taken.way === 'compass';
  const compass =
    here.magnetic === undefined || taken.compass.length === 0
      ? undefined
      : assessCompass(
          taken.compass,
          here.magnetic,
          { ...survey, magneticGround: alone && survey.magneticGround },
          place,
        );
  const set = alone ? compass?.azimuth : taken.azimuth;
  const turned = set === undefined ? undefined : toNorth(set, north, here.angles);
  const dipSet = taken.clinometerDip ?? taken.crewDip;
  const measured =
    turned === undefined || dipSet === undefined ? undefined : { azimuth: turned, dip: dipSet };
  const compassAzimuth =
    compass?.azimuth === undefined ? undefined : toNorth(compass.azimuth, north, here.angles);
  const disagree = [
    ...compassDisagrees(compassAzimuth, alone ? undefined : turned, survey.compassAgreementDeg),
    ...dipsDisagree(taken, survey.dipToleranceDeg),
  ];
  const answer =
    measured === undefined ? undefined : assessLineUp(here.planned, measured, here.targetM, survey);
  const asksNothing = disagree.length > 0 || isPastLineUp(hole);
  return {
    measured,
    set,
    answer: answer === undefined || !asksNothing ? answer : { ...answer, request: undefined },
    compass,
    compassAzimuth,
    disagree,
    findings: [
      ...(set !== undefined && turned === undefined
        ? [northNotKnown(set.north, north, { ...place, thing: 'line-up' })]
        : []),
      ...(alone && here.magnetic === undefined
        ? [northNotKnown('magnetic', north, { ...place, thing: 'line-up' })]
        : []),
      ...(compass?.findings ?? []),
      ...checkMastDip(taken.crewDip, taken.clinometerDip, survey.dipToleranceDeg, place),
    ],
  };
}

function compassDisagrees(
  compass: Azimuth | undefined,
  set: Azimuth | undefined,
  agreementDeg: number,
): readonly string[] {
  if (compass === undefined || set === undefined) return [];
  const apart = Math.abs(degreesBetween(compass.deg, set.deg));
  return apart <= agreementDeg
    ? []
    : [`the compass (${formatAzimuth(compass)}) is ${apart.toFixed(1)}° from ${formatAzimuth(set)}`];
}

function dipsDisagree({ crewDip, clinometerDip }: LineUpTaken, toleranceDeg: number): readonly string[] {
  if (crewDip === undefined || clinometerDip === undefined) return [];
  const apart = Math.abs(crewDip - clinometerDip);
  return apart <= toleranceDeg + 1e-9
    ? []
    : [
        `the crew’s dip (${formatDip(crewDip)}) and the clinometer’s (${formatDip(clinometerDip)}) are ${apart.toFixed(1)}° apart`,
      ];
}

/** How a line-up is decided on. `because`: why it is accepted though it is outside its tolerance. */
export type LineUpDecision =
  | { readonly accepted: true; readonly because?: string }
  | { readonly accepted: false };

/** Records a line-up as it was read and decided on; an accepted one with the collar position, where one was taken. `standing` needs its answer (throws otherwise). */
export function recordLineUpTaken(
  project: Project,
  hole: Document,
  taken: LineUpTaken,
  standing: LineUpStanding,
  decision: LineUpDecision,
  maker: Maker,
): Made {
  const { answer, measured, set } = standing;
  if (answer === undefined || measured === undefined || set === undefined || taken.way === undefined)
    throw new Error('a line-up without a direction was to be recorded');
  const lineUp: LineUp = {
    azimuthDeg: azimuth(Number(set.deg.toFixed(2)), set.north).deg,
    azimuthNorth: set.north,
    dipDeg: measured.dip,
    way: taken.way,
    accepted: decision.accepted,
    readings: readingsOf(taken),
    missMm: Math.round(answer.missM * 1000),
    ...(decision.accepted || answer.request === undefined ? {} : { correction: answer.request }),
    ...(decision.accepted && decision.because !== undefined ? { because: decision.because } : {}),
    ...(taken.cautionsReadBy === undefined ? {} : { cautionsReadBy: taken.cautionsReadBy }),
    ...(taken.permissionBy === undefined ? {} : { permissionBy: taken.permissionBy }),
    at: maker.at,
    by: maker.by,
  };
  const made = recordLineUp(lineUp, maker);
  if (taken.collar === undefined || !decision.accepted) return made;
  const collar = recordCollar(collarThing(project, hole, taken.collar, maker), maker);
  return { what: `${made.what}, with the ${collar.what}`, changes: [...made.changes, ...collar.changes] };
}

function readingsOf(taken: LineUpTaken): NonNullable<LineUp['readings']> {
  return [
    ...taken.compass.map((one) => ({
      kind: 'compass' as const,
      deg: one.deg,
      distanceMm: Math.round(one.distanceM * 1000),
      ...(one.sightedBack ? { sightedBack: true } : {}),
    })),
    ...(taken.crewDip === undefined ? [] : [{ kind: 'crew' as const, deg: taken.crewDip }]),
    ...(taken.clinometerDip === undefined ? [] : [{ kind: 'clinometer' as const, deg: taken.clinometerDip }]),
  ];
}
