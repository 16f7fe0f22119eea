import type { Field, LoggingSchema } from '../schema/logging-schema.ts';
import type { Cells, RowSaid } from '../value/row.ts';

/** The field whose new code is a new rock: the first that takes a second one, else the first that holds one code. */
export function rockField(schema: LoggingSchema): Field | undefined {
  return (
    schema.fields.find((field) => field.kind === 'code' && field.second) ??
    schema.fields.find((field) => field.kind === 'code')
  );
}

/** True where the rock differs from the row above. A second rock, or another share of it, is no new rock. */
export function isNewRock(schema: LoggingSchema, above: RowSaid | undefined, cells: Cells): boolean {
  const name = rockField(schema)?.name;
  const before = name === undefined ? undefined : above?.cells[name];
  const after = name === undefined ? undefined : cells[name];
  if (before === undefined || after === undefined) return false;
  return 'code' in after && !('code' in before && before.code === after.code);
}
