import { ok, type Result, refused } from '../finding/finding.ts';
import { replaceRows } from '../hole/commands/rows.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, rowsDown } from '../hole/hole.ts';
import { formatDepth } from '../quantity/depth.ts';
import { formatInterval } from '../quantity/interval.ts';
import type { Document } from '../record/document.ts';
import { cautionsShown } from '../schema/cautions.ts';
import { meaningsOf } from '../schema/legend.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import type { RangeLine } from '../shorthand/commands.ts';
import { previewRange } from '../shorthand/range.ts';
import type { RangePlan } from './range-plan.ts';

/** Works out what a range line (`;44-49 py2`) would say of the rows it names: the words of it, and the edit. */
export function planSaid(schema: LoggingSchema, hole: Document, said: RangeLine): Result<RangePlan> {
  const rows = rowsDown(hole);
  const { at } = said;
  const holding = at === undefined ? said : rows.find(([, row]) => row.fromMm <= at && row.toMm > at)?.[1];
  if (holding === undefined) return notLogged(hole, at ?? said.fromMm);
  const line = { ...said, fromMm: holding.fromMm, toMm: holding.toMm };
  const preview = previewRange(
    schema,
    rows.map(([, row]) => row),
    line,
  );
  if (preview.kind === 'refused') {
    return refused(
      REFUSALS.notThere.at(
        { hole: headerOf(hole).name, fromMm: line.fromMm, toMm: line.toMm },
        { problem: preview.problem, remedy: preview.remedy },
      ),
    );
  }
  const after = new Map(preview.changes.map((change) => [change.before, change.after]));
  const what = `amended ${formatInterval(line)}`;
  const made = replaceRows(
    hole,
    what,
    rows.map(([id, row]) => [id, after.get(row) ?? row]),
    meaningsOf(schema, [...after.values()]),
  );
  if (!made.ok) return made;
  const lines = preview.changes.map(
    (change) => `${formatInterval(change.before)}: ${change.changes.map((piece) => piece.text).join(', ')}`,
  );
  const skipped = preview.noReturn.map((row) => `${formatInterval(row)}: no return, stays as it is`);
  const cautions = preview.changes.flatMap(({ before, after: { cells } }) =>
    cautionsShown(schema, before.cells, cells),
  );
  return ok({
    lines: [`amend ${formatInterval(line)}`, ...new Set(cautions), ...lines, ...skipped],
    made: made.value,
  });
}

const notLogged = (hole: Document, atMm: number): Result<RangePlan> =>
  refused(
    REFUSALS.notThere.at(
      { hole: headerOf(hole).name, fromMm: atMm },
      {
        problem: `no row is logged at ${formatDepth(atMm)} m`,
        remedy: `Log its row and say it there, its depth behind @: @${formatDepth(atMm)}.`,
      },
    ),
  );
