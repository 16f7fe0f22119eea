import { ok, type Result, refused } from '../finding/finding.ts';
import type { Maker } from '../hole/commands/made.ts';
import { replaceRows } from '../hole/commands/rows.ts';
import { takenOff } from '../hole/commands/waiting-events.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, rowsDown } from '../hole/hole.ts';
import type { Depth } from '../quantity/depth.ts';
import { formatInterval } from '../quantity/interval.ts';
import type { Change, Document } from '../record/document.ts';
import { breaksCarry, cautionsIn, cautionsShown, lostWords } from '../schema/cautions.ts';
import { meaningsOf } from '../schema/legend.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import type { RangeLine } from '../shorthand/commands.ts';
import { previewRange } from '../shorthand/range.ts';
import type { Row } from '../value/row.ts';
import type { RangePlan } from './range-plan.ts';
import { planWaiting } from './waiting-events.ts';

/** Works out what a range line (`;44-49 py2`) would say of the rows it names: the words of it, and the edit. */
export function planSaid(
  schema: LoggingSchema,
  hole: Document,
  said: RangeLine,
  maker: Maker,
): Result<RangePlan> {
  const rows = rowsDown(hole);
  const { at } = said;
  const holding = at === undefined ? said : rows.find(([, row]) => row.fromMm <= at && row.toMm > at)?.[1];
  // A row without return was not seen: what the driller heard there waits beside it.
  const isHeld = holding !== undefined && !('noReturn' in holding && holding.noReturn === true);
  if (at !== undefined && (!isHeld || takesOffWaiting(hole, said, at)))
    return planWaiting(schema, hole, { ...said, at }, maker);
  if (holding === undefined) throw new Error('a range without a depth holds itself');
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
  const skipped = preview.noReturn.map((row) => `${formatInterval(row)}: no return, unchanged`);
  const cautions = preview.changes.flatMap(({ before, after: next }) => [
    ...lostWords(schema, before, next),
    ...stillThere(schema, before, next),
    ...cautionsShown(schema, before.cells, next.cells),
  ]);
  return ok({
    lines: [`amend ${formatInterval(line)}`, ...new Set(cautions), ...lines, ...skipped],
    made: { ...made.value, changes: [...made.value.changes, ...settled(hole, said)] },
  });
}

/** A row of which no chips came, or a void, is given something else besides: chips of what? */
function stillThere(schema: LoggingSchema, before: Row, after: Row): readonly string[] {
  if (!breaksCarry(schema, before) || !breaksCarry(schema, after)) return [];
  const what = [...new Set(cautionsIn(schema, before.cells).map(({ about }) => about))].join(', ');
  return [`CAUTION ${formatInterval(before)} is logged as ${what}, and stays so`];
}

/** True where a line takes out what only waits: a row logged since says nothing of it, or says it elsewhere. */
function takesOffWaiting(hole: Document, { items }: RangeLine, atMm: Depth): boolean {
  return items.every(
    ({ field, says }) =>
      'event' in says &&
      says.gone === true &&
      takenOff(hole, { field: field.name, code: says.event, atMm }).length > 0,
  );
}

/** What waited at the very depth that a row now says it at waits no longer. */
function settled(hole: Document, { at, items }: RangeLine): readonly Change[] {
  if (at === undefined) return [];
  return items.flatMap(({ field, says }) =>
    'event' in says ? takenOff(hole, { field: field.name, code: says.event, atMm: at }) : [],
  );
}
