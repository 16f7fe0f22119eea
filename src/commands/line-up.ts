import { isPastLineUp, type PlannedHere, plannedHere } from '../acts/line-up.ts';
import { collarSentences, gridSentences, northSentences, PAST_LINE_UP } from '../acts/line-up-sentences.ts';
import type { Outside } from '../desk/outside.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { azimuth, formatAzimuth } from '../quantity/azimuth.ts';
import { dip, formatDip } from '../quantity/dip.ts';
import type { Document } from '../record/document.ts';
import { surveyOf } from '../standing/survey.ts';
import { collarsByRank } from '../survey/collar/collars.ts';
import { formatExpected } from '../survey/collar/compass.ts';
import {
  assessLineUp,
  formatAzimuthCompared,
  formatDipCompared,
  type LineUpAnswer,
} from '../survey/collar/line-up.ts';
import { inEveryNorth, toNorth } from '../survey/norths/norths.ts';
import { atProject, holeNamed, type Shared } from './at-project.ts';
import { EXIT, refuse, say, sayJson } from './say.ts';

/** What `offsider line-up` is given. */
export interface LineUpAsked extends Shared {
  readonly hole: string;
  readonly json: boolean;
}

/** Says the planned direction of a hole in every north, what a compass should read, where the collar is, and how the accepted line-up compares. */
export function lineUp(outside: Outside, asked: LineUpAsked): Promise<number> {
  return atProject(outside, asked, async (at) => {
    const hole = holeNamed(at, asked.hole);
    if (!hole.ok) return refuse(outside, ...hole.findings);
    const here = plannedHere(at.project, hole.value, at.desk.now());
    const answer = here === undefined ? undefined : accepted(at.project, hole.value, here);
    if (asked.json) sayJson(outside, factsOf(at.project, hole.value, here, answer));
    else say(outside, linesOf(at.project, hole.value, here, answer).join('\n'));
    return answer?.accepted === false ? EXIT.findings : EXIT.fine;
  });
}

function factsOf(
  project: Project,
  hole: Document,
  here: PlannedHere | undefined,
  answer: LineUpAnswer | undefined,
) {
  return {
    hole: headerOf(hole).name,
    ...here?.angles,
    field: here?.field,
    planned: here === undefined ? [] : inEveryNorth(here.planned.azimuth, here.angles, here.field?.epoch),
    dipDeg: here?.planned.dip,
    collars: collarsByRank(holeNouns(hole, 'collars')),
    set: surveyOf(project, hole).lineUp,
    compared: answer,
    findings: here?.findings ?? [],
  };
}

/** The accepted line-up compared with the plan as it is now. */
function accepted(project: Project, hole: Document, here: PlannedHere): LineUpAnswer | undefined {
  const { lineUp: set } = surveyOf(project, hole);
  if (set === undefined) return undefined;
  const measured = toNorth(
    azimuth(set.azimuthDeg, set.azimuthNorth),
    here.planned.azimuth.north,
    here.angles,
  );
  if (measured === undefined) return undefined;
  const answer = assessLineUp(
    here.planned,
    { azimuth: measured, dip: dip(set.dipDeg) },
    here.targetM,
    project.survey,
  );
  return isPastLineUp(hole) ? { ...answer, request: undefined } : answer;
}

function linesOf(
  project: Project,
  hole: Document,
  here: PlannedHere | undefined,
  answer: LineUpAnswer | undefined,
): readonly string[] {
  const { name } = headerOf(hole);
  if (here === undefined) return [`${name} has no planned direction.`];
  const { planned, magnetic, angles } = here;
  const norths = inEveryNorth(planned.azimuth, angles, here.field?.epoch);
  const positions = collarSentences({ hole }, undefined);
  return [
    `${name}, planned dip ${formatDip(planned.dip)}, azimuth ${norths.map(formatAzimuth).join(' = ')}`,
    ...northSentences({ here, project }).map((each) => each.text),
    ...(magnetic === undefined ? [] : [`On the compass ${formatExpected(magnetic)}.`]),
    ...positions.map((each) => each.text),
    ...(positions.length === 0 ? [] : gridSentences({ project }).map((each) => each.text)),
    ...(answer === undefined ? ['No line-up is accepted yet.'] : answerLines(answer, here)),
    ...(answer?.accepted === false && isPastLineUp(hole) ? [PAST_LINE_UP] : []),
    'Only the driller moves the rig; a correction is a request.',
  ];
}

function answerLines(answer: LineUpAnswer, { planned }: PlannedHere): readonly string[] {
  return [
    `Set: ${formatAzimuthCompared(answer.azimuth, planned.azimuth)}`,
    `     ${formatDipCompared(answer.dip)}`,
    `     ${answer.missM.toFixed(1)} m at the target`,
    ...(answer.request === undefined ? [] : [answer.request]),
  ];
}
