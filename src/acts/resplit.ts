import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { issueBags, recordBagRun } from '../hole/commands/drilled.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { resplitRefused } from '../sampling/findings.ts';
import { type ResplitList, resplitList } from '../sampling/laboratory/resplit-list.ts';
import { returnedOf } from '../standing/returned.ts';
import { streamStateOf } from '../standing/stream.ts';
import { type RunLabelled, runMeant } from './number-bags.ts';

/** A resplit list that would be made, with the numbers that are labelled for it. */
export interface ProposedResplit extends ResplitList {
  readonly numbers?: RunLabelled;
}

/** The single metres that returned results ask for in a hole. Refused where the project has no rule for it, or a number is none. */
export function proposeResplit(
  project: Project,
  documents: Iterable<Document>,
  hole: Document,
  numbers?: RunLabelled,
): Result<ProposedResplit> {
  const { sampling } = project;
  if (sampling.resplit === undefined)
    return refused(
      cannot(
        hole,
        'the project does not say which composites ask for single metres',
        'Write sampling.resplit in project.json: analyte, atLeast, neighbours, pilesPerRow.',
      ),
    );
  const all = [...documents];
  const whole = numbers === undefined ? ok(undefined) : runMeant(project, hole, numbers, all);
  if (!whole.ok) return whole;
  const state = streamStateOf(hole);
  const run =
    whole.value === undefined ? [] : [{ ...whole.value, rig: rigOf(project, hole), at: AT_NO_TIME }];
  const results = [...returnedOf(project, all).byNumber.values()];
  const named = { name: headerOf(hole).name, state: { ...state, bagRuns: [...state.bagRuns, ...run] } };
  const list = resplitList(sampling, named, results);
  return ok({ ...list, ...(whole.value === undefined ? {} : { numbers: whole.value }) });
}

/** A run that is only looked through: its time plays no part. */
const AT_NO_TIME = '1970-01-01T00:00:00+00:00' as Maker['at'];

/** Numbers the single metres as one edit, with the controls that their numbers bring. Refused where nothing asks or numbers run out. */
export function makeResplit(
  project: Project,
  hole: Document,
  proposed: ProposedResplit,
  maker: Maker,
): Result<Made> {
  const { bags, unnumbered, numbers, lines } = proposed;
  if (lines.length === 0) return refused(cannot(hole, 'no result asks for single metres', 'Nothing to do.'));
  if (unnumbered > 0)
    return refused(
      cannot(
        hole,
        `${unnumbered} of its metres have no numbered bag`,
        'Label bags of the block of this rig and say their first and last number with it.',
      ),
    );
  const metres = bags.filter((bag) => bag.kind === 'primary').length;
  const made = issueBags(
    hole,
    `${metres} single metres numbered, ${bags[0]?.number} to ${bags.at(-1)?.number}`,
    bags,
    maker,
  );
  if (!made.ok || numbers === undefined) return made;
  const run = recordBagRun({ ...numbers, rig: rigOf(project, hole), at: maker.at }, maker);
  return ok({ what: made.value.what, changes: [...run.changes, ...made.value.changes] });
}

function rigOf(project: Project, hole: Document): string {
  return holeNouns(hole, 'drilling').at(-1)?.rig ?? project.settings.rigs[0]?.name ?? '';
}

function cannot(hole: Document, problem: string, remedy: string): Finding {
  return resplitRefused.at({ hole: headerOf(hole).name }, { problem, remedy });
}
