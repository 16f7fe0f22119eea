import { formatInterval, overlaps, within } from '../quantity/interval.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import { type Row, sameObservation } from '../value/row.ts';
import { buildCells } from './build-cells.ts';
import type { RangeLine } from './commands.ts';
import { explain, type Segment } from './explain.ts';
import { type Refusal, refusal } from './said.ts';

/** A row of a range as it would become, with what would change in words; none where nothing would. */
type RangeChange = { readonly before: Row; readonly after: Row; readonly changes: readonly Segment[] };

/** Everything a range line would do, for the preview and for the edit. */
export type RangePreview = {
  readonly kind: 'preview';
  /** Rows that would change, down the hole. */
  readonly changes: readonly RangeChange[];
  /** Rows without return in the range: nothing was seen there, they stay as they are. */
  readonly noReturn: readonly Row[];
};

/**
 * What `;44-49 py2` would do to the rows of a hole. Nothing carries: each row keeps all that isn't said. Single keys
 * need their mineral in each row. Refused as a whole where one row can't take it, where the range cuts a row, or if there is no row.
 */
export function previewRange(
  schema: LoggingSchema,
  rows: readonly Row[],
  line: RangeLine,
): RangePreview | Refusal {
  const touched = rows.filter((row) => overlaps(row, line)).sort((a, b) => a.fromMm - b.fromMm);
  const cut = touched.find((row) => !within(row, line));
  const span = { position: 1, length: formatInterval(line).length };
  if (cut !== undefined) {
    return refusal(
      span,
      `The range cuts the row ${formatInterval(cut)}`,
      'Take whole rows, or split that one first',
    );
  }
  const observed = touched.filter((row) => !row.noReturn);
  if (observed.length === 0) {
    return refusal(
      span,
      `No row with chips is logged in ${formatInterval(line)}`,
      'Type a range of logged rows',
    );
  }
  const changes: RangeChange[] = [];
  for (const before of observed) {
    const after = amended(schema, before, line);
    if ('kind' in after) return after;
    if (!sameObservation(before, after)) {
      const words = explain(after, { schema, above: before }).filter(
        ({ kind }) => kind !== 'same' && kind !== 'note',
      );
      changes.push({ before, after, changes: words });
    }
  }
  return { kind: 'preview', changes, noReturn: touched.filter((row) => row.noReturn) };
}

function amended(schema: LoggingSchema, row: Row, line: RangeLine): Row | Refusal {
  const where = formatInterval(row);
  const base = {
    schema,
    cellOf: (field: { readonly name: string }) => row.cells[field.name],
    keysIn: row.cells,
    keysWhere: `in ${where}`,
    interval: row,
  };
  const last = line.items.at(-1);
  const built = buildCells(base, line.items, (last?.position ?? 0) + (last?.length ?? 0));
  if (built.kind === 'refused') {
    return built.problem.includes(where) ? built : { ...built, problem: `${where}: ${built.problem}` };
  }
  const { carried, repeat: _, ...rest } = row;
  const stillCarried = (carried ?? []).filter((name) => !line.items.some((item) => item.field.name === name));
  return { ...rest, cells: built.cells, ...(stillCarried.length === 0 ? {} : { carried: stillCarried }) };
}
