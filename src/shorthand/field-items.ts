import { type Field, qualifiersOf } from '../schema/logging-schema.ts';
import {
  type Amount,
  type Amounts,
  amountsIn,
  type Cell,
  NONE,
  NOT_OBSERVED,
  type PointEvent,
  type Qualities,
  qualifiedIn,
  sameCell,
  sharesIn,
} from '../value/cell.ts';
import type { Cells } from '../value/row.ts';
import { carriedCell } from './carry.ts';
import type { EntryContext } from './parse.ts';
import { writeAmount, writePoint } from './read-amount.ts';
import { standsIn, typingIndex } from './typing-index.ts';
import { writeNamedAmount, writeNamedCell, writeNamedEvent } from './write-named.ts';

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
    return [changes(context, field, partsOf(carried), partsOf(target))];
  if ('events' in target) return [eventItems(context, field, target.events)];
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
    standsIn(context.above?.cells, field, code);
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

/** Every event of a row: none of them carries. */
function eventItems(
  context: EntryContext,
  field: Field,
  events: { readonly [code: string]: PointEvent },
): Way {
  return Object.entries(events).map(([code, { atMm, number }]): Written => {
    const measured = number === undefined ? '' : writeAmount(number);
    const place = atMm === undefined ? '' : writePoint(atMm, context.interval);
    const strokes = strokesWith(context, field, code, `${measured}${place}`);
    if (strokes !== undefined) return strokes;
    return { text: `${writeNamedEvent(context.schema, field, code, number)}${place}`, named: true };
  });
}

/** Codes of a cell with their amounts, and what more is said of each. */
type Parts = {
  readonly amounts: Amounts;
  readonly qualified: { readonly [code: string]: Qualities };
};

const NOTHING: Parts = { amounts: {}, qualified: {} };

function partsOf(cell: Cell | undefined): Parts {
  return { amounts: amountsIn(cell), qualified: qualifiedIn(cell) };
}

function changes(context: EntryContext, field: Field, before: Parts, after: Parts): Way {
  const gone = Object.keys(before.amounts).filter((code) => !Object.hasOwn(after.amounts, code));
  const changed = Object.entries(after.amounts).flatMap(([code, amount]): Way => {
    const more = qualityItems(context, field, before.qualified[code], after.qualified[code]);
    const isSame = Object.hasOwn(before.amounts, code) && before.amounts[code] === amount;
    if (isSame && more.length === 0) return [];
    const main = isSame ? bareItem(context, field, code, more) : undefined;
    return [joined([main ?? amountItem(context, field, code, amount), ...more])];
  });
  return [...changed, ...gone.map((code) => amountItem(context, field, code, 0))];
}

/** A mineral without its amount, where it has a pair and what follows is typed by one: its amount stays. */
function bareItem(
  context: EntryContext,
  field: Field,
  code: string,
  [next]: readonly Written[],
): Written | undefined {
  const { pair } = typingIndex(context.schema).strokesOf(field, code);
  return pair === undefined || next === undefined || next.named ? undefined : { text: pair, named: false };
}

/** What more is said of a code, as it changes: by pairs first, for they can be glued. */
function qualityItems(
  { schema }: EntryContext,
  field: Field,
  before: Qualities = {},
  after: Qualities = {},
): readonly Written[] {
  const index = typingIndex(schema);
  const items = qualifiersOf(field).flatMap(({ list }): readonly Written[] => {
    const [was, is] = [before[list], after[list]];
    const as = index.qualityFields.get(list.toLowerCase());
    if (was === is || as === undefined) return [];
    const { pair } = index.strokesOf(as, is ?? was);
    if (pair !== undefined) return [{ text: is === undefined ? `${pair}0` : pair, named: false }];
    return [{ text: writeNamedCell(schema, as, is === undefined ? NONE : { code: is }), named: true }];
  });
  return items.toSorted((a, b) => Number(a.named) - Number(b.named));
}

/** Items that have to follow one another, as one: pairs run on, a named one has a space before and behind it. */
function joined(items: readonly Written[]): Written {
  const text = items.reduce((line, item, index) => {
    const glued = index === 0 || (!item.named && items[index - 1]?.named === false);
    return `${line}${glued ? '' : ' '}${item.text}`;
  }, '');
  return { text, named: items.some(({ named }) => named) };
}

/** None: every code taken out one by one, or the field's own strokes with 0. */
function noneWays(context: EntryContext, field: Field, carried: Cell | undefined): readonly Way[] {
  const own = strokesWith(context, field, undefined, '0');
  if (own !== undefined) return [[own]];
  const before = partsOf(carried);
  if (Object.keys(before.amounts).length > 0) return [changes(context, field, before, NOTHING)];
  if (field.unsaid !== 'none' || carried !== undefined || !('list' in field) || field.kind === 'code')
    return [];
  const codes = context.schema.lists[field.list]?.codes ?? [];
  // Taking out any one of them leaves none: the fewest strokes will do.
  const items = codes.flatMap(({ code }) => strokesWith(context, field, code, '0') ?? []);
  const shortest = items.toSorted((a, b) => a.text.length - b.text.length)[0];
  return shortest === undefined ? [] : [[shortest]];
}

/** The first with what is beside it said; only what is beside it where the first carries; what is gone taken out where only that changes. */
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
  const more = qualityItems(context, field, {}, qualifiedIn(target)[target.code]);
  const all = [joined([first, ...more]), ...changes(context, field, NOTHING, after)];
  if (carried === undefined || !('code' in carried) || carried.code !== target.code) return [all];
  const replaces = field.kind === 'code' && field.third !== true && Object.keys(after.amounts).length > 0;
  const shares = changes(context, field, replaces ? NOTHING : percents(carried), after);
  const [was, is] = [qualifiedIn(carried)[carried.code] ?? {}, qualifiedIn(target)[target.code] ?? {}];
  // A second colour of the same list is said right behind the first, so the first is said again.
  const own = 'list' in field ? field.list : '';
  return was[own] === is[own] ? [all, [...shares, ...qualityItems(context, field, was, is)]] : [all];
}

/** What is beside the first code of a cell, by code. */
function percents(cell: Extract<Cell, { code: string }>): Parts {
  const amounts = Object.fromEntries(sharesIn(cell).map(({ code, percent }) => [code, percent]));
  return { ...NOTHING, amounts };
}
