import type { Interval } from '../quantity/interval.ts';
import { fieldApplies } from '../schema/applies.ts';
import { breaksCarry } from '../schema/cautions.ts';
import type { Field, FieldOf, LoggingSchema } from '../schema/logging-schema.ts';
import { percentOf } from '../schema/read-cell.ts';
import {
  type Amount,
  type Amounts,
  amountsIn,
  type Cell,
  cellOfAmounts,
  codeWith,
  NONE,
  NOT_OBSERVED,
  type Share,
  sharesIn,
} from '../value/cell.ts';
import type { Cells } from '../value/row.ts';
import { alwaysSomething } from './meaning.ts';
import { combineEvents } from './point-events.ts';
import { qualify } from './qualities.ts';
import { type Refusal, refusal, type Said } from './said.ts';
import { codeNamed, saidTwice } from './slots.ts';
import { labelOf, standsIn, typingIndex } from './typing-index.ts';

/** What items are applied to. */
export type Base = {
  readonly schema: LoggingSchema;
  /** What a field holds before the items change it, and what it keeps when nothing is said of it; `cells` are those of the fields above it. */
  readonly cellOf: (field: Field, cells: Cells) => Cell | undefined;
  /** The field whose change keeps this one from carrying, by name; nothing where rows are amended, for nothing carries there. */
  readonly barrierOf?: (field: Field, cells: Cells) => string | undefined;
  /** The row that single keys need their mineral in (undefined for a first row), and what it is called: "above", "in 44–45". */
  readonly keysIn: Cells | undefined;
  readonly keysWhere: string;
  /** Where the row is: what depths of events are read against. Not known where a line is only looked at. */
  readonly interval?: Interval | undefined;
  /** No one saw what is left unsaid: a void, a loss of return. */
  readonly unseen?: true;
};

/** Cells of a row, and the fields that were left unsaid and kept what `cellOf` gave. */
export type Built = { readonly kind: 'built'; readonly cells: Cells; readonly carried: readonly string[] };

/**
 * Applies what a line says, field by field in the order of the log sheet, so that only-when fields see those above them. Where the line
 * says a void or a loss of return, nothing is kept: all that it does not say was not observed.
 */
export function buildCells(base: Base, said: readonly Said[], lineEnd: number): Built | Refusal {
  return saysNoChips(base.schema, said)
    ? cellsOf({ ...base, cellOf: () => undefined, unseen: true }, said, lineEnd)
    : cellsOf(base, said, lineEnd);
}

/** True where a line says a void or a loss of return. */
function saysNoChips(schema: LoggingSchema, said: readonly Said[]): boolean {
  return said.some(({ field, says }) => {
    if ('quality' in says || ('code' in says && says.amount === 0)) return false;
    if ('event' in says)
      return (
        says.gone !== true &&
        breaksCarry(schema, { cells: { [field.name]: { events: { [says.event]: {} } } } })
      );
    return breaksCarry(schema, {
      cells: { [field.name]: 'code' in says ? amountAlone(field, says) : says.cell },
    });
  });
}

/** A cell that holds what one item says and nothing else. */
function amountAlone(
  field: Field,
  { code, amount }: { readonly code: string; readonly amount: Amount },
): Cell {
  return isSeveral(field) ? cellOfAmounts(field.kind, { [code]: amount }) : { code };
}

/** True of a field that holds several codes, changed one by one. */
function isSeveral(field: Field): field is FieldOf<'levels' | 'percents' | 'codes'> {
  return field.kind === 'levels' || field.kind === 'percents' || field.kind === 'codes';
}

function cellsOf(base: Base, said: readonly Said[], lineEnd: number): Built | Refusal {
  const cells: { [field: string]: Cell } = {};
  const carried: string[] = [];
  const misplaced = said.find((item) => item.byKey && !standsIn(base.keysIn, item.field, codeNamed(item)));
  if (misplaced !== undefined) return keyWithoutMineral(base, misplaced);
  for (const field of base.schema.fields) {
    const items = said.filter((item) => item.field === field);
    if (!fieldApplies(base.schema, cells, field)) {
      if (items[0] !== undefined) return notAsked(field, items[0]);
      continue;
    }
    const before = base.cellOf(field, cells);
    const barrier = base.barrierOf?.(field, cells);
    const cell =
      items.length === 0
        ? (before ?? unsaid(base, field, lineEnd, barrier))
        : field.kind === 'events'
          ? combineEvents(base.schema, base.interval, field, items, before)
          : combined(base.schema, field, items, before, absentIn(base, field));
    if ('kind' in cell) return cell;
    cells[field.name] = cell;
    if (items.length === 0 && before !== undefined) carried.push(field.name);
  }
  return { kind: 'built', cells, carried };
}

function unsaid(base: Base, field: Field, lineEnd: number, barrier: string | undefined): Cell | Refusal {
  if (base.unseen || !field.required) return absentIn(base, field);
  const changed = base.schema.fields.find(({ name }) => name === barrier);
  return refusal(
    { position: lineEnd, length: 0 },
    changed === undefined
      ? `${field.label} is needed in this row`
      : `${field.label} is needed in this row: it does not carry across a change of ${changed.label}`,
    `Say it, or ${field.name}'nr if it was not observed`,
  );
}

/** What a field says where nothing is kept of it. */
function absentIn(base: Base, field: Field): Cell {
  return base.unseen ? NOT_OBSERVED : { absent: field.unsaid };
}

/** What a field holds after its items, and what more they say of its codes. */
function combined(
  schema: LoggingSchema,
  field: Field,
  items: readonly Said[],
  before: Cell | undefined,
  absent: Cell,
): Cell | Refusal {
  const twice = saidTwice(field, items);
  if (twice !== undefined) return saidAgain(schema, field, items, twice);
  const plain = items.filter(({ says }) => !('quality' in says));
  const cell = plain.length === 0 ? (before ?? absent) : combine(schema, field, plain, before, absent);
  return 'kind' in cell ? cell : qualify(schema, field, cell, before, items);
}

/** What to do about a thing given twice: its two amounts are named, for one of them is meant for another thing, or is a slip. */
function onceWords(items: readonly Said[], twice: Said): string {
  const first = items.find((item) => item !== twice && codeNamed(item) === codeNamed(twice));
  const both = [first, twice].flatMap((item) =>
    item !== undefined && 'code' in item.says ? [String(item.says.amount)] : [],
  );
  return both.length === 2
    ? `Give it once: ${both.join(' or ')}? Nothing was taken`
    : 'Give it once: nothing was taken';
}

/** Why an item can't stand beside an earlier one: the same said twice, or two codes in one place, each named. */
function saidAgain(schema: LoggingSchema, field: Field, items: readonly Said[], twice: Said): Refusal {
  const label = labelOf(schema, field, codeNamed(twice));
  const isShare = 'code' in twice.says;
  const other = items.find(
    (item) =>
      item !== twice &&
      item.position < twice.position &&
      !('quality' in item.says) &&
      'code' in item.says === isShare &&
      codeNamed(item) !== codeNamed(twice),
  );
  if (field.kind !== 'code' || 'quality' in twice.says || other === undefined)
    return refusal(twice, `${label} is given twice`, onceWords(items, twice));
  const both = `${labelOf(schema, field, codeNamed(other))} and ${label} are both given as the ${isShare ? 'second' : 'first'} ${field.label}`;
  const { pair } = typingIndex(schema).strokesOf(field, codeNamed(twice));
  const example = pair === undefined ? 'its percent' : `its percent, like ${pair}20`;
  return refusal(
    twice,
    both,
    isShare
      ? `Only one more ${field.label} fits beside the first: leave one out`
      : field.second
        ? `The larger one is alone; put ${example}, after the other`
        : 'Leave one out',
  );
}

/** What a field holds after its items: a whole cell said once, or the amounts of its codes changed one by one. */
function combine(
  schema: LoggingSchema,
  field: Field,
  items: readonly Said[],
  kept: Cell | undefined,
  absent: Cell,
): Cell | Refusal {
  if (field.kind === 'code') return combineCode(schema, field, items, kept) ?? absent;
  const whole = items.map((item) => item.says).find((says) => 'cell' in says);
  if (whole !== undefined) return whole.cell;
  const before = kept ?? absent;
  const unseen = takenOutUnseen(schema, field, before, items);
  if (unseen !== undefined) return unseen;
  if (!isSeveral(field)) throw new Error(`${field.name} holds no codes that could be changed`);
  const amounts = changed(amountsIn(before), items);
  return (
    emptied(field, amounts, items) ?? overLimit(field, amounts, items) ?? cellOfAmounts(field.kind, amounts)
  );
}

/** Where a field was not observed, a 0 for one code says nothing of the others: "none" has to be said of the whole. */
function takenOutUnseen(
  schema: LoggingSchema,
  field: Field,
  before: Cell,
  items: readonly Said[],
): Refusal | undefined {
  const item = items.find(({ says }) => 'code' in says && says.amount === 0);
  if (item === undefined || !('absent' in before) || before.absent === 'none') return undefined;
  const label = labelOf(schema, field, codeNamed(item));
  return refusal(
    item,
    `${label} can't be taken out: ${field.label} was not observed`,
    `Say ${field.name}'0 if you looked and saw none`,
  );
}

/**
 * The first as said, else as it was; what is beside it as said, else as it was, unless a first is said: a rock said alone is
 * alone. Undefined where nothing is there to keep.
 */
function combineCode(
  schema: LoggingSchema,
  field: FieldOf<'code'>,
  items: readonly Said[],
  before: Cell | undefined,
): Cell | Refusal | undefined {
  const whole = items.map((item) => item.says).find((says) => 'cell' in says);
  const first = whole?.cell ?? before;
  const said = items.filter((item) => 'code' in item.says);
  const [share] = said;
  if (share === undefined) return first;
  if (first === undefined || !('code' in first)) {
    return refusal(
      share,
      `${labelOf(schema, field, codeNamed(share))} would be the second, and there is no first`,
      'Say the first too, without an amount',
    );
  }
  let shares: readonly Share[] = whole === undefined ? sharesIn(first) : [];
  // What is taken out makes room, whatever its place in the line.
  for (const item of said.toSorted((a, b) => Number(takesOut(b)) - Number(takesOut(a)))) {
    const next = withShare(schema, field, first.code, shares, item);
    if ('kind' in next) return next;
    shares = next;
  }
  return tooLittleLeft(schema, field, first.code, shares, share) ?? codeWith(first.code, shares);
}

function takesOut({ says }: Said): boolean {
  return 'code' in says && says.amount === 0;
}

/** The shares with what one item says of them. Where only a second can stand, another one takes its place. */
function withShare(
  schema: LoggingSchema,
  field: FieldOf<'code'>,
  first: string,
  shares: readonly Share[],
  item: Said,
): readonly Share[] | Refusal {
  if (!('code' in item.says)) return shares;
  const { code, amount } = item.says;
  const label = labelOf(schema, field, code);
  if (first === code) {
    return refusal(
      item,
      `${label} is the first already`,
      'Say another one as the second, or leave its amount out',
    );
  }
  const others = shares.filter((each) => each.code !== code);
  if (amount === 0) {
    if (others.length < shares.length) return others;
    return refusal(item, `${label} is not the second`, 'A first on its own is enough: leave the 0 out');
  }
  const share = { code, percent: Number(amount) };
  if (field.third !== true) return [share];
  if (others.length < 2) return [...others, share];
  const [second, third] = others.map((each) => labelOf(schema, field, each.code));
  return refusal(
    item,
    `${label} would be a fourth beside ${labelOf(schema, field, first)}, ${second} and ${third}`,
    'Take one out with 0, or say the first again with what is beside it now',
  );
}

/** The first has the largest share: what is beside it leaves it that much. */
function tooLittleLeft(
  schema: LoggingSchema,
  field: FieldOf<'code'>,
  first: string,
  shares: readonly Share[],
  at: Said,
): Refusal | undefined {
  const left = shares.reduce((rest, { percent }) => rest - percent, 100);
  const larger = shares.find(({ percent }) => percent > left + 1e-9);
  if (larger === undefined) return undefined;
  return refusal(
    at,
    `${labelOf(schema, field, first)} is left with ${Number(left.toFixed(3))} %, less than ${labelOf(schema, field, larger.code)}`,
    'Name the one with the biggest share first, without an amount',
  );
}

/** The amounts with those of the items put in, and what they take out left out. */
function changed(before: Amounts, items: readonly Said[]): Amounts {
  const amounts = new Map(Object.entries(before));
  for (const { says } of items) {
    if (!('code' in says)) continue;
    if (says.amount === 0) amounts.delete(says.code);
    else amounts.set(says.code, says.amount);
  }
  return Object.fromEntries(amounts);
}

function emptied(field: Field, amounts: Amounts, items: readonly Said[]): Cell | Refusal | undefined {
  if (Object.keys(amounts).length > 0) return undefined;
  if (field.canBeNone) return NONE;
  const { problem, remedy } = alwaysSomething(field);
  return refusal(items.at(-1) ?? { position: 0, length: 0 }, problem, remedy);
}

function overLimit(field: Field, percents: Amounts, items: readonly Said[]): Refusal | undefined {
  if (field.kind !== 'percents') return undefined;
  const sum = Object.values(percents).reduce((total: number, amount) => total + percentOf(amount, field), 0);
  if (sum <= field.sumLimitPercent + 1e-9) return undefined;
  return refusal(
    items.at(-1) ?? { position: 0, length: 0 },
    `${field.label} adds up to ${Number(sum.toFixed(3))} %, over the limit of ${field.sumLimitPercent}`,
    'Lower an amount, or take one out with 0',
  );
}

function keyWithoutMineral({ schema, keysWhere, keysIn }: Base, item: Said): Refusal {
  const label = labelOf(schema, item.field, codeNamed(item));
  const { pair } = typingIndex(schema).strokesOf(item.field, codeNamed(item));
  const amount = item.text.slice(1);
  const problem =
    keysIn === undefined ? `No row above carries ${label} into this one` : `${label} is not ${keysWhere}`;
  return pair === undefined
    ? refusal(item, problem, `Say it by its field: ${item.field.name}'`)
    : refusal(item, problem, `Type ${pair}${amount} if you see it`, [{ text: `${pair}${amount}`, label }]);
}

function notAsked(field: Field, item: Said): Refusal {
  return refusal(
    item,
    `${field.label} is not asked of a row like this`,
    field.onlyWhen === undefined ? 'Leave it out' : 'Say first what it depends on, or leave it out',
  );
}
