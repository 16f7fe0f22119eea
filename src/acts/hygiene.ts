import { ok, type Result, refused } from '../finding/finding.ts';
import { drilledMm, recordStream } from '../hole/commands/drilled.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeThings } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { type Depth, depthFromMm } from '../quantity/depth.ts';
import type { Interval } from '../quantity/interval.ts';
import type { Change, Document, Id, Thing } from '../record/document.ts';
import { careWords, type RodCare } from '../shorthand/rod-care.ts';
import { rodsDown } from '../standing/hygiene.ts';
import { cavitiesLeft, feltChange } from './felt.ts';

/** A rod done, with what was seen of cyclone, splitter, hole and water in the same edit. Nothing seen leaves it as it is. */
export function withCare(
  project: Project,
  hole: Document,
  done: Result<Made>,
  care: RodCare | undefined,
  maker: Maker,
): Result<Made> {
  if (!done.ok || care === undefined) return done;
  const rod = done.value.changes.find((change) => 'put' in change && change.put[0] === 'rods');
  if (rod === undefined || !('put' in rod)) return done;
  const over = { fromMm: depthFromMm(drilledMm(hole)), toMm: rod.thing.depthMm as Depth };
  return ok({
    what: `${done.value.what}; ${careWords(care)}${cavitiesBelow(project, hole, care, over)}`,
    changes: [...done.value.changes, ...careChanges(hole, rod.put[1], over, care, maker)],
  });
}

/** What was seen at the latest rod, said afterwards; what was said before of the same parts is amended. */
export function recordHygiene(project: Project, hole: Document, care: RodCare, maker: Maker): Result<Made> {
  const last = rodsDown(hole).at(-1);
  if (last === undefined) {
    return refused(
      REFUSALS.notThere.at(
        { hole: headerOf(hole).name },
        { problem: 'no rod is done yet', remedy: 'Say it when the first rod is done.' },
      ),
    );
  }
  return ok({
    what: `rod ${last.rod}: ${careWords(care)}${cavitiesBelow(project, hole, care, last)}`,
    changes: careChanges(hole, last.id, last, care, maker),
  });
}

function cavitiesBelow(
  { schema }: Project,
  hole: Document,
  { felt }: RodCare,
  { fromMm, toMm }: Interval,
): string {
  return felt === undefined ? '' : cavitiesLeft(schema, hole, { felt, fromMm, toMm });
}

function careChanges(
  hole: Document,
  rod: Id,
  over: { readonly fromMm: Depth; readonly toMm: Depth },
  care: RodCare,
  maker: Maker,
): readonly Change[] {
  const { water, felt, ...seen } = care;
  const there = holeThings(hole, 'hygiene').findLast(([, each]) => each.rod === rod);
  const hygiene: readonly Change[] =
    Object.keys(seen).length === 0
      ? []
      : there === undefined
        ? [{ put: ['hygiene', maker.newId()], thing: { rod, ...seen } as Thing }]
        : [{ patch: ['hygiene', there[0]], set: seen as Thing }];
  const { fromMm, toMm } = over;
  const wet = water === undefined ? [] : recordStream(hole, { fromMm, toMm, water }, maker).changes;
  const word = felt === undefined ? [] : [feltChange({ felt }, { fromMm, toMm }, maker).change];
  return [...hygiene, ...wet, ...word];
}
