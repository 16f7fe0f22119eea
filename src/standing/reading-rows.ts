import { rowsDown } from '../hole/hole.ts';
import type { Document, Id } from '../record/document.ts';
import { fieldApplies } from '../schema/applies.ts';
import type { LoggingSchema, NumberField } from '../schema/logging-schema.ts';
import type { Row } from '../value/row.ts';

/** Fields that hold readings of an instrument, in the order of the log sheet. */
export function columnFields(schema: LoggingSchema): readonly NumberField[] {
  return schema.fields.filter((field): field is NumberField => field.kind === 'number' && field.column);
}

/** True of a row that a reading can stand in: something came up, and the field is asked of it. */
export function takesReading(schema: LoggingSchema, field: NumberField, row: Row): boolean {
  return row.noReturn !== true && fieldApplies(schema, row.cells, field);
}

/** Logged rows that a reading can stand in, from the top down. */
export function readingRows(
  schema: LoggingSchema,
  hole: Document,
  field: NumberField,
): readonly (readonly [Id, Row])[] {
  return rowsDown(hole).filter(([, row]) => takesReading(schema, field, row));
}

/**
 * Where to go on reading: the first row without a reading below the deepest one that has one, else the first without; the last
 * row where all are read. Undefined where no row can take a reading.
 */
export function nextReading(rows: readonly (readonly [Id, Row])[], field: NumberField): Id | undefined {
  const isRead = ([, row]: readonly [Id, Row]): boolean => hasReading(row, field);
  const deepest = rows.findLastIndex(isRead);
  const next = rows.slice(deepest + 1)[0] ?? rows.find((row) => !isRead(row)) ?? rows.at(-1);
  return next?.[0];
}

/** True where the row holds a reading, or that there was none of it. */
export function hasReading(row: Row, { name }: NumberField): boolean {
  const cell = row.cells[name];
  return cell !== undefined && !('absent' in cell && cell.absent === 'not observed');
}
