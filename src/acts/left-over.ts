import { ok, type Result, refused } from '../finding/finding.ts';
import type { BagRun } from '../hole/bags.ts';
import type { Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { isOver } from '../hole/header.ts';
import { headerOf, holeNouns, holeThings } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Change, Document, DocumentName, Thing } from '../record/document.ts';
import { numberLine } from '../sampling/numbers/number-line.ts';
import { lastPlace } from '../sampling/stream/stream.ts';
import { rigOfBags } from '../standing/bag-run.ts';
import { streamStateOf } from '../standing/stream.ts';

/** Numbers labelled for a hole that is over and never used: stretches of them, the first and last number of each. */
export interface LeftOver {
  readonly hole: Document;
  readonly runs: readonly { readonly first: string; readonly last: string }[];
}

/** An edit over several documents. */
interface MadeOver {
  readonly what: string;
  readonly parts: readonly { readonly document: DocumentName; readonly changes: readonly Change[] }[];
}

/** Labels left over from a hole of the same rig that is over, the one labelled last; none where the project leaves them with their hole. */
export function leftOverFor(
  project: Project,
  documents: Iterable<Document>,
  hole: Document,
): LeftOver | undefined {
  if (!project.sampling.carriesLeftOver) return undefined;
  const rig = rigOfBags(project, hole);
  const over = [...documents].filter(
    (each) => each.kind === 'hole' && each.id !== hole.id && isOver(headerOf(each).state),
  );
  return over
    .filter((each) => holeNouns(each, 'bagRuns').at(-1)?.rig === rig)
    .map((each) => ({ hole: each, runs: stretches(project, each, (used) => !used) }))
    .filter(({ runs }) => runs.length > 0)
    .sort((a, b) => (labelledAt(a.hole) < labelledAt(b.hole) ? 1 : -1))[0];
}

function labelledAt(hole: Document): string {
  return holeNouns(hole, 'bagRuns').at(-1)?.at ?? '';
}

/** Stretches of the numbers behind the last one that the stream gave, of those that are used (a spare, a torn one) or of those that are not. */
function stretches(project: Project, hole: Document, wanted: (used: boolean) => boolean): LeftOver['runs'] {
  const { sampling } = project;
  const state = streamStateOf(hole);
  const line = numberLine(sampling.numbers, state.bagRuns);
  const used = new Set([...state.bags, ...state.putOffs].map((each) => each.number));
  const ends = new Set(state.bagRuns.map((run) => run.last));
  const found: { first: string; last: string }[] = [];
  let open = false;
  for (let place = lastPlace(sampling, state, line) + 1; place < line.length; place++) {
    const number = line.at(place) ?? '';
    const takes = wanted(used.has(number));
    const run = found.at(-1);
    if (takes && open && run !== undefined) run.last = number;
    else if (takes) found.push({ first: number, last: number });
    open = takes && !ends.has(number);
  }
  return found;
}

/** Carries the labels left over on into a hole: they are its own from now on, and the hole that is over keeps those that it used. */
export function takeLeftOver(
  project: Project,
  documents: Iterable<Document>,
  hole: Document,
  maker: Maker,
): Result<MadeOver> {
  const left = leftOverFor(project, documents, hole);
  if (left === undefined)
    return refused(
      REFUSALS.notThere.at(
        { hole: headerOf(hole).name },
        {
          problem: project.sampling.carriesLeftOver
            ? 'no labels are left over from a hole of this rig that is over'
            : 'project.json leaves labels with the hole that they were made for',
          remedy: 'Label numbers of their own for it: ;numbered and the first and last number.',
        },
      ),
    );
  const { first } = left.runs[0] ?? { first: '' };
  const rig = rigOfBags(project, hole);
  const taken = left.runs.map(
    (run): Change => ({ put: ['bagRuns', maker.newId()], thing: { ...run, rig, at: maker.at } }),
  );
  return ok({
    what: `labels left over from ${headerOf(left.hole).name} carry on from ${first}`,
    parts: [
      { document: nameOf(hole), changes: taken },
      { document: nameOf(left.hole), changes: keptRuns(project, left.hole, maker) },
    ],
  });
}

/** The runs of a hole cut down to what it used: those behind the last bag go, and a spare used further on has a run of its own. */
function keptRuns(project: Project, hole: Document, maker: Maker): readonly Change[] {
  const { sampling } = project;
  const state = streamStateOf(hole);
  const line = numberLine(sampling.numbers, state.bagRuns);
  const last = lastPlace(sampling, state, line);
  const rig = holeNouns(hole, 'bagRuns').at(-1)?.rig ?? '';
  const cut = holeThings(hole, 'bagRuns').flatMap(([id, run]): readonly Change[] => {
    const [from, to] = [line.placeOf(run.first) ?? 0, line.placeOf(run.last) ?? 0];
    if (to <= last) return [];
    return [
      from > last
        ? { remove: ['bagRuns', id] }
        : { patch: ['bagRuns', id], set: { last: line.at(last) ?? run.last } },
    ];
  });
  const used = stretches(project, hole, (each) => each).map(
    (run): Change => ({
      put: ['bagRuns', maker.newId()],
      thing: { ...run, rig, at: maker.at } satisfies BagRun as Thing,
    }),
  );
  return [...cut, ...used];
}

function nameOf({ kind, id }: Document): DocumentName {
  return { kind, id };
}
