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
  const higher = rows.filter(([, row]) => row.fromMm < fromMm).map(([, row]) => row);
  const previous = higher.at(-1);
  const seen = higher.findLast((row) => !breaksCarry(schema, row));
  return {
    above: seen === previous ? seen : undefined,
    seen,
    previous,
    repeats: repeatsUp(higher, fromMm),
  };
}

function repeatsUp(higher: readonly Row[], fromMm: number): number {
  const last = higher.at(-1);
  if (last === undefined || last.toMm !== fromMm) return 0;
  let count = 1;
  for (let index = higher.length - 2; index >= 0; index -= 1) {
    const row = higher[index];
    const below = higher[index + 1];
    if (row === undefined || below === undefined || row.toMm !== below.fromMm || !sameObservation(row, last))
      break;
    count += 1;
  }
  return count;
}
