import { ok, type Result, refused } from '../../finding/finding.ts';
import type { Made } from '../../hole/commands/made.ts';
import { amendRow } from '../../hole/commands/rows.ts';
import { REFUSALS } from '../../hole/findings.ts';
import { headerOf, holeThing } from '../../hole/hole.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document, Id } from '../../record/document.ts';
import { readingNotTaken } from '../../schema/findings.ts';
import { meaningsOf } from '../../schema/legend.ts';
import type { LoggingSchema, NumberField } from '../../schema/logging-schema.ts';
import { readReading } from '../../schema/read/reading-text.ts';
import { type Cell, sameCell } from '../../value/cell.ts';

/** A reading of an instrument as typed beside a logged row: the row amended. Refused, with nothing changed, where it is none of the field. */
export function recordReading(
  schema: LoggingSchema,
  hole: Document,
  id: Id,
  field: NumberField,
  typed: string,
): Result<Made> {
  const row = holeThing(hole, 'rows', id);
  const place = { hole: headerOf(hole).name, field: field.name };
  if (row === undefined)
    return refused(
      REFUSALS.notThere.at(place, {
        problem: 'the row is no longer there',
        remedy: 'Look at the history: it may have been cleared or merged.',
      }),
    );
  const read = readReading(schema, field, typed);
  if (!read.ok) {
    const { fromMm, toMm } = row;
    return refused(
      readingNotTaken.at({ ...place, fromMm, toMm }, { problem: read.problem, remedy: read.remedy }),
    );
  }
  const was = row.cells[field.name];
  if (sameCell(was, read.cell)) return ok({ what: 'nothing changed', changes: [] });
  const said = { ...row, cells: { ...row.cells, [field.name]: read.cell } };
  const made = amendRow(hole, id, said, meaningsOf(schema, [{ cells: { [field.name]: read.cell } }]));
  if (!made.ok) return made;
  const before = was === undefined || 'absent' in was ? '' : `, was ${readingWords(field, was)}`;
  const what = `${field.label} ${readingWords(field, read.cell)} at ${formatInterval(row)}${before}`;
  return ok({ ...made.value, what });
}

/** A reading in words: `0.42 1e-3 SI`, `none`, `not read`. */
export function readingWords({ unit, decimals }: NumberField, cell: Cell): string {
  if ('number' in cell) return `${cell.number.toFixed(decimals)} ${unit}`;
  return 'absent' in cell && cell.absent === 'none' ? 'none' : 'not read';
}
