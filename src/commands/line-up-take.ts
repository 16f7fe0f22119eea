import { lineUpStanding, plannedHere, recordLineUpTaken } from '../acts/line-up.ts';
import type { LineUpContext } from '../acts/line-up-order.ts';
import { decisionSentence, resultSentences } from '../acts/line-up-sentences.ts';
import type { Outside } from '../desk/outside.ts';
import { type Finding, ok } from '../finding/finding.ts';
import { headerOf } from '../hole/hole.ts';
import { type AtProject, atProject, holeNamed, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { type ReadingsAsked, type ReadingsTaken, takeReadings } from './line-up-readings.ts';
import { makerOf, submitMade } from './lines/submit-made.ts';
import { EXIT, refuse, say, sayAside, sayJson } from './say.ts';

/** What `offsider line-up <hole>` is given with readings. */
export interface LineUpTakeAsked extends Shared {
  readonly hole: string;
  readonly json: boolean;
  readonly readings: ReadingsAsked;
  /** Record it: accepted inside its tolerance, else refused with the correction to request. */
  readonly record: boolean;
  /** Why it is accepted though it is outside its tolerance. */
  readonly because?: string | undefined;
}

/** Holds a line-up as read against the plan, as the screen does; with `record` it is decided on and kept. */
export function lineUpTake(outside: Outside, asked: LineUpTakeAsked): Promise<number> {
  return atProject(outside, { ...asked, write: asked.record }, async (at) => {
    const hole = holeNamed(at, asked.hole);
    if (!hole.ok) return refuse(outside, ...hole.findings);
    const here = plannedHere(at.project, hole.value, at.desk.now());
    if (here === undefined) return refuse(outside, noPlan(asked.hole));
    const context: LineUpContext = {
      project: at.project,
      hole: hole.value,
      documents: [...at.desk.documents().values()],
      here,
      person: at.desk.person,
      now: at.desk.now(),
    };
    const taken = await takeReadings(asked.readings, context);
    if (!taken.ok) return refuse(outside, ...taken.findings);
    return tell(at, context, taken.value, asked);
  });
}

async function tell(
  at: AtProject,
  context: LineUpContext,
  { reading, said }: ReadingsTaken,
  asked: LineUpTakeAsked,
): Promise<number> {
  const { outside, project } = at;
  const standing = lineUpStanding(project, context.hole, reading.taken, context.here);
  const { answer } = standing;
  if (asked.json) sayJson(outside, { hole: headerOf(context.hole).name, taken: reading.taken, ...standing });
  else
    say(
      outside,
      [
        decisionSentence(standing, context.hole)?.text ?? 'Nothing to decide yet.',
        ...said,
        ...resultSentences(reading, standing, context).map((each) => each.text),
      ].join('\n'),
    );
  if (asked.record) {
    const missing = answer === undefined ? 'the line-up is not complete' : missingWord(reading.taken);
    if (missing !== undefined) return refuse(outside, notRecorded(missing));
    const code = await keep(at, context, reading.taken, standing, asked.because);
    if (code !== undefined) return code;
  }
  return answer?.accepted === true || (answer !== undefined && asked.because !== undefined)
    ? EXIT.fine
    : EXIT.findings;
}

function missingWord(taken: ReadingsTaken['reading']['taken']): string | undefined {
  if (taken.cautionsReadBy === undefined) return 'who read the cautions is missing (--cautions)';
  if (taken.permissionBy === undefined) return 'who gave permission is missing (--permission)';
  return taken.way === undefined ? 'how the rig was set is missing (--way)' : undefined;
}

/** Records the line-up as decided; an exit code where it could not be. */
async function keep(
  at: AtProject,
  { project, hole }: LineUpContext,
  taken: ReadingsTaken['reading']['taken'],
  standing: ReturnType<typeof lineUpStanding>,
  because: string | undefined,
): Promise<number | undefined> {
  const accepted = standing.answer?.accepted === true || because !== undefined;
  const decision = accepted
    ? { accepted: true as const, ...(because === undefined ? {} : { because }) }
    : { accepted: false as const };
  const made = recordLineUpTaken(project, hole, taken, standing, decision, makerOf(at.desk));
  const name = { kind: hole.kind, id: hole.id };
  const done = await submitMade({ desk: at.desk, project, hole: name, noteMismatches: false }, ok(made));
  if (done.kind === 'refused')
    return refuse(at.outside, wrongUse.at({ hole: hole.id }, { problem: done.problem, remedy: done.remedy }));
  sayAside(
    at.outside,
    accepted
      ? 'Accepted and recorded: station 0 of the hole.'
      : standing.answer?.request === undefined
        ? 'Refused and recorded, without a request.'
        : 'Refused and recorded, with the request.',
  );
  return undefined;
}

function notRecorded(problem: string): Finding {
  return wrongUse.at({ file: '--record' }, { problem, remedy: 'Nothing is recorded. Give what is missing.' });
}

function noPlan(hole: string): Finding {
  return wrongUse.at(
    { hole },
    {
      problem: 'the hole has no planned direction to compare with',
      remedy: 'Give it a plan first: offsider enter, then ;plan 270g -60 180.',
    },
  );
}
