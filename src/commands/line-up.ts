import type { Outside } from '../desk/outside.ts';
import { headerOf, planOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { type Azimuth, azimuth, formatAzimuth } from '../quantity/azimuth.ts';
import { metres } from '../quantity/depth.ts';
import { dip, formatDip } from '../quantity/dip.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { directionsOf, siteOfProject, surveyOf } from '../standing/survey.ts';
import { bestCollar, positionOf } from '../survey/collars.ts';
import { formatExpected } from '../survey/compass.ts';
import { assessLineUp, formatAzimuthCompared, formatDipCompared } from '../survey/line-up.ts';
import {
  formatConvergence,
  formatDeclination,
  inEveryNorth,
  type NorthAngles,
  toNorth,
} from '../survey/norths.ts';
import { anglesAt } from '../survey/site.ts';
import { atProject, holeNamed } from './at-project.ts';
import { EXIT, refuse, say, sayJson } from './say.ts';

/** What `offsider line-up` is given. */
export interface LineUpAsked {
  readonly folder: string;
  readonly hole: string;
  readonly json: boolean;
}

/** Says the planned direction of a hole in every north, what a compass should read, and how the accepted line-up compares. */
export function lineUp(outside: Outside, asked: LineUpAsked): Promise<number> {
  return atProject(outside, { folder: asked.folder }, async (at) => {
    const hole = holeNamed(at, asked.hole);
    if (!hole.ok) return refuse(outside, ...hole.findings);
    const facts = lineUpFacts(at.project, hole.value, at.desk.now());
    if (asked.json) sayJson(outside, facts);
    else say(outside, lineUpLines(at.project, hole.value, at.desk.now()).join('\n'));
    return facts.compared?.accepted === false ? EXIT.findings : EXIT.fine;
  });
}

function lineUpFacts(project: Project, hole: Document, now: Stamp) {
  const plan = planOf(hole);
  const angles = anglesOf(project, hole, now);
  const planned = plan === undefined ? undefined : azimuth(plan.azimuthDeg, plan.azimuthNorth);
  return {
    hole: headerOf(hole).name,
    ...angles,
    planned: planned === undefined ? [] : inEveryNorth(planned, angles),
    dipDeg: plan?.dipDeg,
    set: surveyOf(project, hole).lineUp,
    compared: compared(project, hole, angles),
  };
}

/** Declination and convergence at the best collar, today. */
function anglesOf(project: Project, hole: Document, now: Stamp): NorthAngles {
  const { collars, place } = directionsOf(project, hole);
  const collar = bestCollar(collars);
  const position = collar === undefined ? undefined : positionOf(collar);
  return anglesAt(siteOfProject(project), position, metres(collar?.elevationMm ?? 0), now, place).angles;
}

function compared(project: Project, hole: Document, angles: NorthAngles) {
  const plan = planOf(hole);
  const { lineUp: set } = surveyOf(project, hole);
  if (plan === undefined || set === undefined) return undefined;
  const measured = toNorth(azimuth(set.azimuthDeg, set.azimuthNorth), plan.azimuthNorth, angles);
  if (measured === undefined) return undefined;
  const planned = { azimuth: azimuth(plan.azimuthDeg, plan.azimuthNorth), dip: dip(plan.dipDeg) };
  const targetM = metres(plan.targetMm ?? plan.depthMm);
  return assessLineUp(planned, { azimuth: measured, dip: dip(set.dipDeg) }, targetM, project.survey);
}

function lineUpLines(project: Project, hole: Document, now: Stamp): readonly string[] {
  const {
    planned,
    dipDeg,
    compared: answer,
    declinationDeg,
    convergenceDeg,
    hole: name,
  } = lineUpFacts(project, hole, now);
  const plan = planOf(hole);
  if (plan === undefined || dipDeg === undefined) return [`${name} has no planned direction.`];
  const magnetic: Azimuth | undefined = planned.find((each) => each.north === 'magnetic');
  return [
    `${name}, planned dip ${formatDip(dipDeg)}, azimuth ${planned.map(formatAzimuth).join(' = ')}`,
    ...(declinationDeg === undefined ? [] : [formatDeclination(declinationDeg)]),
    ...(convergenceDeg === undefined ? [] : [formatConvergence(convergenceDeg)]),
    ...(magnetic === undefined ? [] : [`On the compass ${formatExpected(magnetic)}.`]),
    ...(answer === undefined
      ? ['No line-up is accepted yet.']
      : [
          `Set: ${formatAzimuthCompared(answer.azimuth, azimuth(plan.azimuthDeg, plan.azimuthNorth))}`,
          `     ${formatDipCompared(answer.dip)}`,
          `     ${answer.missM.toFixed(1)} m at the target`,
          ...(answer.request === undefined ? [] : [answer.request]),
        ]),
    'Only the driller moves the rig; a correction is a request.',
  ];
}
