import { codeOf, type Field, type LoggingSchema, qualifierFor, scaleOf } from '../schema/logging-schema.ts';
import {
  amountsIn,
  type Cell,
  cellOfAmounts,
  codeWith,
  kindOf,
  qualifiedIn,
  sharesIn,
  withQualified,
} from '../value/cell.ts';
import type { Cells, RowSaid } from '../value/row.ts';

/**
 * The one carry rule: what a field left unsaid takes from the last observed row above, by the field's flag, also across
 * a contact unless the field says not. Undefined where nothing carries: no row above, a field that isn't carried or wasn't
 * asked there, one whose barrier is crossed between that row and `cells`, and whatever can't be logged again today (a retired
 * code, a level that the scale no longer has). `cells` are those of the row itself, the fields above this one at least.
 */
export function carriedCell(
  schema: LoggingSchema,
  field: Field,
  above: RowSaid | undefined,
  cells: Cells,
): Cell | undefined {
  const cell = above?.cells[field.name];
  if (!field.carry || cell === undefined || barrierCrossed(field, above, cells) !== undefined)
    return undefined;
  const carried = loggable(schema, field, cell);
  return carried === undefined ? undefined : withQualified(carried, loggableQualities(schema, field, cell));
}

/** What more is said of a cell's codes that can be said today. */
function loggableQualities(schema: LoggingSchema, field: Field, cell: Cell): ReturnType<typeof qualifiedIn> {
  const usable = (list: string, quality: string): boolean =>
    schema.lists[list]?.codes.some(
      ({ code, retiredSince }) => code === quality && retiredSince === undefined,
    ) === true;
  return Object.fromEntries(
    Object.entries(qualifiedIn(cell)).map(([code, qualities]) => [
      code,
      Object.fromEntries(
        Object.entries(qualities).filter(
          ([list, quality]) => qualifierFor(field, list, code) !== undefined && usable(list, quality),
        ),
      ),
    ]),
  );
}

/** The first field of a field's `notAcross` that is not as in the row above; undefined where all are, or there is no row above. */
export function barrierCrossed(field: Field, above: RowSaid | undefined, cells: Cells): string | undefined {
  if (above === undefined) return undefined;
  return field.notAcross?.find((name) => barrier(above.cells[name]) !== barrier(cells[name]));
}

/** What of a cell makes a change of it: which rock, not its share; which minerals, not how much; else all that it says. */
function barrier(cell: Cell | undefined): string {
  if (cell === undefined) return 'not asked';
  if ('code' in cell) return cell.code;
  const codes = Object.keys(amountsIn(cell));
  return codes.length > 0 ? codes.sort().join() : JSON.stringify(cell);
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
  if ('levels' in cell || 'percents' in cell || 'codes' in cell) {
    const amounts = kept(
      amountsIn(cell),
      (code, amount) => usable(code) && !('levels' in cell && Number(amount) > highest),
    );
    return amounts === undefined ? undefined : cellOfAmounts(kindOf(cell) as 'levels', amounts);
  }
  return cell;
}

function loggableCode(
  cell: Extract<Cell, { code: string }>,
  usable: (code: string) => boolean,
): Cell | undefined {
  if (!usable(cell.code)) return undefined;
  return codeWith(
    cell.code,
    sharesIn(cell).filter(({ code }) => usable(code)),
  );
}

/** The entries that pass; undefined where none does, because "none seen" is never made from what is only left out. */
function kept<T>(
  amounts: { readonly [code: string]: T },
  passes: (code: string, amount: T) => boolean,
): { readonly [code: string]: T } | undefined {
  const entries = Object.entries(amounts).filter(([code, amount]) => passes(code, amount));
  return entries.length === 0 ? undefined : Object.fromEntries(entries);
}
