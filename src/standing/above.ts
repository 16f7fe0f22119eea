import type { Id } from '../record/document.ts';
import { breaksCarry } from '../schema/cautions.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import type { Row, RowSaid } from '../value/row.ts';
import { sameObservation } from '../value/row.ts';

/** What the entry line reads a row against: the rows above a depth. */
export interface Above {
  /** The row above, where it was observed: what carries, and where single keys find their mineral. None right below a void or a metre without return. */
  readonly above: RowSaid | undefined;
  /** The last observed row above, whatever lies between: what `.` repeats. */
  readonly seen: RowSaid | undefined;
  /** The row directly above, whatever it is. */
  readonly previous: RowSaid | undefined;
  /** Rows alike in an unbroken run directly above. */
  readonly repeats: number;
}

/** What is above a depth, of rows sorted from the top down. A gap breaks a run of repeats but not the carry. */
export function aboveDepth(
  schema: LoggingSchema,
  rows: readonly (readonly [Id, Row])[],
  fromMm: number,
): Above {
  // Rows are asked about at each key, and the depth in hand is nearly always below the last of them.
  const last = rows.findLastIndex(([, row]) => row.fromMm < fromMm);
  const previous = rows[last]?.[1];
  let at = last;
  while (at >= 0 && breaksCarry(schema, rows[at]![1])) at -= 1;
  const seen = rows[at]?.[1];
  return {
    above: seen === previous ? seen : undefined,
    seen,
    previous,
    repeats: repeatsUp(rows, last, fromMm),
  };
}

function repeatsUp(rows: readonly (readonly [Id, Row])[], lastIndex: number, fromMm: number): number {
  const last = rows[lastIndex]?.[1];
  if (last === undefined || last.toMm !== fromMm) return 0;
  let count = 1;
  for (let index = lastIndex - 1; index >= 0; index -= 1) {
    const row = rows[index]?.[1];
    const below = rows[index + 1]?.[1];
    if (row === undefined || below === undefined || row.toMm !== below.fromMm || !sameObservation(row, last))
      break;
    count += 1;
  }
  return count;
}
