import { codeOf, type Field, type LoggingSchema, scaleOf } from '../schema/logging-schema.ts';
import { type Cell, kindOf } from '../value/cell.ts';
import type { RowSaid } from '../value/row.ts';

/**
 * The one carry rule: what a field left unsaid takes from the last observed row above, by the field's flag, also across
 * a contact. Undefined where nothing carries: no row above, a field that isn't carried or wasn't asked there, and
 * whatever can't be logged anew today (a retired code, a level that the scale no longer has).
 */
export function carriedCell(
  schema: LoggingSchema,
  field: Field,
  above: RowSaid | undefined,
): Cell | undefined {
  const cell = above?.cells[field.name];
  return field.carry && cell !== undefined ? loggable(schema, field, cell) : undefined;
}

function loggable(schema: LoggingSchema, field: Field, cell: Cell): Cell | undefined {
  if ('absent' in cell) return cell.absent === 'none' && !field.canBeNone ? undefined : cell;
  if (kindOf(cell) !== field.kind) return undefined;
  const usable = (code: string): boolean => {
    const known = codeOf(schema, field, code);
    return known !== undefined && known.retiredSince === undefined;
  };
  const highest = scaleOf(schema, field)?.levels.length ?? 0;
  if ('code' in cell) return loggableCode(cell, usable);
  if ('level' in cell) return cell.level <= highest ? cell : undefined;
  if ('levels' in cell) {
    const levels = kept(cell.levels, (code, level) => usable(code) && level <= highest);
    return levels === undefined ? undefined : { levels };
  }
  if ('percents' in cell) {
    const percents = kept(cell.percents, usable);
    return percents === undefined ? undefined : { percents };
  }
  return cell;
}

function loggableCode(
  cell: Extract<Cell, { code: string }>,
  usable: (code: string) => boolean,
): Cell | undefined {
  if (!usable(cell.code)) return undefined;
  return cell.second === undefined || usable(cell.second.code) ? cell : { code: cell.code };
}

/** The entries that pass; undefined where none does, because "none seen" is never made from what is only left out. */
function kept<T>(
  amounts: { readonly [code: string]: T },
  passes: (code: string, amount: T) => boolean,
): { readonly [code: string]: T } | undefined {
  const entries = Object.entries(amounts).filter(([code, amount]) => passes(code, amount));
  return entries.length === 0 ? undefined : Object.fromEntries(entries);
}
