import type { Field, LoggingSchema } from '../../src/schema/logging-schema.ts';
import { carriedCell } from '../../src/shorthand/carry.ts';
import type { EntryContext } from '../../src/shorthand/parse.ts';
import { type Amount, type Cell, sameCell } from '../../src/value/cell.ts';
import type { RowSaid } from '../../src/value/row.ts';
import { stepsOf } from './shorthand-log.ts';

/** A row with what it is logged below. */
export type Placed = { readonly row: RowSaid; readonly context: EntryContext };

/** Every row of a log with the row above it, where that was observed, and the run of rows alike directly above. */
export function placed(schema: LoggingSchema, rows: readonly RowSaid[], gloves: boolean): readonly Placed[] {
  let above: RowSaid | undefined;
  let repeats = 0;
  return rows.map((row, index) => {
    const context: EntryContext = { schema, above, previous: rows[index - 1], repeats, gloves };
    repeats =
      above !== undefined && JSON.stringify(above.cells) === JSON.stringify(row.cells) ? repeats + 1 : 1;
    above = row.noReturn ? undefined : row;
    return { row, context };
  });
}

type Things = { readonly [thing: string]: string };

/** What a cell says, thing by thing: the first rock, the second with its share, each mineral. */
function thingsIn(field: Field, cell: Cell | undefined): Things {
  if (cell === undefined || 'absent' in cell) return cell === undefined ? {} : { [field.name]: cell.absent };
  if ('code' in cell) {
    const first = { [field.name]: cell.code };
    return cell.second === undefined
      ? first
      : { ...first, second: `${cell.second.code} ${cell.second.percent}` };
  }
  const amounts =
    'levels' in cell ? cell.levels : 'percents' in cell ? cell.percents : { '': JSON.stringify(cell) };
  return Object.fromEntries(
    Object.entries(amounts).map(([code, amount]) => [`${field.name} ${code}`, `${amount}`]),
  );
}

/** How many things have to be said of a row: what differs from what carries, each mineral by itself. */
export function changesIn({ row, context }: Placed): number {
  if (row.noReturn) return 1;
  return context.schema.fields.reduce((sum, field) => {
    const after = row.cells[field.name];
    if (after === undefined) return sum;
    const before = carriedCell(context.schema, field, context.above, row.cells) ?? { absent: field.unsaid };
    if (sameCell(before, after)) return sum;
    const was = thingsIn(field, before);
    const is = thingsIn(field, after);
    const gone =
      'absent' in after || 'absent' in before
        ? []
        : Object.keys(was).filter((thing) => is[thing] === undefined);
    return sum + gone.length + Object.keys(is).filter((thing) => is[thing] !== was[thing]).length;
  }, 0);
}

/** The fewest keys that an explicit line can have, Enter counted: two keys a change, and never fewer than two. */
export function floorOf(changes: number): number {
  return Math.max(2, 1 + 2 * changes);
}

const SLOTS = 3;

/**
 * A row as a spreadsheet has it, cell by cell, as text: code and amount columns beside one another, three minerals to a field that holds several.
 * Columns of instruments are left out of all counts: their readings go in batches. From and to fill themselves.
 */
function sheetCells(schema: LoggingSchema, row: RowSaid): readonly string[] {
  return schema.fields
    .filter((field) => !(field.kind === 'number' && field.column))
    .flatMap((field): readonly string[] => {
      const cell = row.cells[field.name];
      if (field.kind === 'levels' || field.kind === 'percents') {
        const amounts: { readonly [code: string]: Amount } =
          cell === undefined ? {} : 'levels' in cell ? cell.levels : 'percents' in cell ? cell.percents : {};
        const texts = Object.entries(amounts).flatMap(([code, amount]) => [
          code,
          amount === 'trace' ? 'tr' : `${amount}`,
        ]);
        return Array.from({ length: Math.max(2 * SLOTS, texts.length) }, (_, index) => texts[index] ?? '');
      }
      if (field.kind !== 'code') return [plainText(cell)];
      const code = cell !== undefined && 'code' in cell ? cell : undefined;
      const second = code?.second;
      return field.second
        ? [code?.code ?? '', second?.code ?? '', second === undefined ? '' : `${second.percent}`]
        : [code?.code ?? ''];
    });
}

function plainText(cell: Cell | undefined): string {
  if (cell === undefined || 'absent' in cell) return '';
  if ('level' in cell) return `${cell.level}`;
  if ('percent' in cell) return cell.percent === 'trace' ? 'tr' : `${cell.percent}`;
  return 'number' in cell ? `${cell.number}` : 'y';
}

/** Keys of a whole spreadsheet row: each cell typed, Tab between, Enter behind. */
export function spreadsheetKeys({ row, context }: Placed): number {
  const cells = sheetCells(context.schema, row);
  return cells.join('').length + cells.length;
}

/** Keys where the row above is copied down (one chord, two keys), then arrows to each cell that differs, its text, and Home and Enter. */
export function copyDownKeys({ row, context }: Placed): number {
  const before = context.above === undefined ? [] : sheetCells(context.schema, context.above);
  let at = 0;
  let keys = 4;
  sheetCells(context.schema, row).forEach((text, column) => {
    if (text === (before[column] ?? '')) return;
    keys += column - at + Math.max(1, text.length);
    at = column;
  });
  return keys;
}

/**
 * Bits of a log under an adaptive order-1 model: each thing (a field, or a mineral of one) is foretold from its value in the row above,
 * with the Krichevsky–Trofimov estimator (counts so far plus one half), learning as it goes. A bound on what any line could cost that is as little told beforehand.
 */
export function adaptiveBits(schema: LoggingSchema, rows: readonly RowSaid[]): number {
  const counts = new Map<string, Map<string, number>>();
  let bits = 0;
  let above: RowSaid | undefined;
  for (const row of rows.filter((each) => !each.noReturn)) {
    for (const { slot, values, valueIn } of slotsOf(schema)) {
      const context = `${slot}|${above === undefined ? '' : valueIn(above)}`;
      const seen = counts.get(context) ?? new Map<string, number>();
      const total = [...seen.values()].reduce((sum, each) => sum + each, 0);
      const value = valueIn(row);
      bits -= Math.log2(((seen.get(value) ?? 0) + 0.5) / (total + values / 2));
      counts.set(context, seen.set(value, (seen.get(value) ?? 0) + 1));
    }
    above = row;
  }
  return bits;
}

type Slot = { readonly slot: string; readonly values: number; readonly valueIn: (row: RowSaid) => string };

function slotsOf(schema: LoggingSchema): readonly Slot[] {
  return schema.fields.flatMap((field): readonly Slot[] => {
    const codes = 'list' in field ? (schema.lists[field.list]?.codes ?? []) : [];
    const whole = (values: number): Slot => ({
      slot: field.name,
      values,
      valueIn: (row) => JSON.stringify(row.cells[field.name] ?? ''),
    });
    if (field.kind === 'code') return [whole(codes.length + 2)];
    if (field.kind === 'flag') return [whole(2)];
    if (field.kind === 'level' || field.kind === 'percent') return [whole(stepsOf(schema, field).length + 1)];
    if (field.kind !== 'levels' && field.kind !== 'percents') return [];
    return codes.map(({ code }) => ({
      slot: `${field.name} ${code}`,
      values: stepsOf(schema, field).length,
      valueIn: (row) => thingsIn(field, row.cells[field.name])[`${field.name} ${code}`] ?? '',
    }));
  });
}
