import type { Field } from '../schema/logging-schema.ts';
import {
  type Amount,
  type Amounts,
  amountsIn,
  type Cell,
  NOT_OBSERVED,
  sameCell,
  sharesIn,
} from '../value/cell.ts';
import type { Cells } from '../value/row.ts';
import { carriedCell } from './carry.ts';
import type { EntryContext } from './parse.ts';
import { writeAmount } from './read-amount.ts';
import { standsIn, typingIndex } from './typing-index.ts';
import { writeNamedAmount, writeNamedCell } from './write-named.ts';

/** One item as typed; a named one starts the line or follows a space. */
export type Written = { readonly text: string; readonly named: boolean };

/** A way to say a field: its items, none where leaving it unsaid says it. */
export type Way = readonly Written[];

/**
 * The ways to make a field hold a cell, given what carries into it, that could stand in a shortest line. Leaving it
 * unsaid, where that does it, is the only way unless `aloud` asks for it to be said all the same. `unseen` is a row with a void;
 * `cells` are those of the row.
 */
export function waysToSay(
  context: EntryContext & { readonly unseen?: boolean; readonly cells: Cells },
  field: Field,
  target: Cell,
  aloud = false,
): readonly Way[] {
  const { schema } = context;
  const carried = context.unseen ? undefined : carriedCell(schema, field, context.above, context.cells);
  const unsaid = context.unseen
    ? NOT_OBSERVED
    : (carried ?? (field.required ? undefined : { absent: field.unsaid }));
  if (!aloud && unsaid !== undefined && sameCell(unsaid, target)) return [[]];
  const byName: Way = [{ text: writeNamedCell(schema, field, target), named: true }];
  if ('levels' in target || 'percents' in target || 'codes' in target)
    return [changes(context, field, amountsIn(carried), amountsIn(target))];
  if ('code' in target) return codeWays(context, field, carried, target);
  if ('absent' in target && target.absent === 'none')
    return [...(context.unseen && 'list' in field ? [] : noneWays(context, field, carried)), byName];
  const amount = ownAmount(target);
  const strokes = amount === undefined ? undefined : strokesWith(context, field, undefined, amount);
  return [strokes === undefined ? byName : [strokes]];
}

/** A flag is typed by its strokes alone; a level or a percent has its amount behind them. */
function ownAmount(cell: Cell): string | undefined {
  if ('flag' in cell) return '';
  if ('level' in cell) return `${cell.level}`;
  return 'percent' in cell ? writeAmount(cell.percent) : undefined;
}

/** Key or pair with what follows them; undefined where neither types it here. */
function strokesWith(
  context: EntryContext,
  field: Field,
  code: string | undefined,
  behind: string,
): Written | undefined {
  const { pair, key } = typingIndex(context.schema).strokesOf(field, code);
  const byKey =
    key !== undefined &&
    behind !== '' &&
    context.gloves !== true &&
    standsIn(context.above?.cells ?? {}, field, code);
  const strokes = byKey ? key : pair;
  return strokes === undefined ? undefined : { text: `${strokes}${behind}`, named: false };
}

function amountItem(context: EntryContext, field: Field, code: string, amount: Amount): Written {
  const byName = (): Written => ({
    text: writeNamedAmount(context.schema, field, code, amount),
    named: true,
  });
  const behind = field.kind === 'codes' && amount === 1 ? '' : writeAmount(amount);
  return strokesWith(context, field, code, behind) ?? byName();
}

function changes(context: EntryContext, field: Field, before: Amounts, after: Amounts): Way {
  const gone = Object.keys(before).filter((code) => !Object.hasOwn(after, code));
  const changed = Object.entries(after).filter(
    ([code, amount]) => !Object.hasOwn(before, code) || before[code] !== amount,
  );
  return [
    ...changed.map(([code, amount]) => amountItem(context, field, code, amount)),
    ...gone.map((code) => amountItem(context, field, code, 0)),
  ];
}

/** None: every code taken out one by one, or the field's own strokes with 0. */
function noneWays(context: EntryContext, field: Field, carried: Cell | undefined): readonly Way[] {
  const own = strokesWith(context, field, undefined, '0');
  if (own !== undefined) return [[own]];
  const before = amountsIn(carried);
  if (Object.keys(before).length > 0) return [changes(context, field, before, {})];
  if (field.unsaid !== 'none' || carried !== undefined || !('list' in field) || field.kind === 'code')
    return [];
  const codes = context.schema.lists[field.list]?.codes ?? [];
  // Taking out any one of them leaves none: the fewest strokes will do.
  const items = codes.flatMap(({ code }) => strokesWith(context, field, code, '0') ?? []);
  const shortest = items.toSorted((a, b) => a.text.length - b.text.length)[0];
  return shortest === undefined ? [] : [[shortest]];
}

/** The first with what stands beside it said; only what is beside it where the first carries; what is gone taken out where only that changes. */
function codeWays(
  context: EntryContext,
  field: Field,
  carried: Cell | undefined,
  target: Extract<Cell, { code: string }>,
): readonly Way[] {
  const first =
    strokesWith(context, field, target.code, '') ??
    ({ text: writeNamedCell(context.schema, field, { code: target.code }), named: true } satisfies Written);
  const after = percents(target);
  const all = [first, ...changes(context, field, {}, after)];
  if (carried === undefined || !('code' in carried) || carried.code !== target.code) return [all];
  const before = percents(carried);
  const replaces = field.kind === 'code' && field.third !== true && Object.keys(after).length > 0;
  return [all, changes(context, field, replaces ? {} : before, after)];
}

/** What stands beside the first code of a cell, by code. */
function percents(cell: Extract<Cell, { code: string }>): Amounts {
  return Object.fromEntries(sharesIn(cell).map(({ code, percent }) => [code, percent]));
}
