import { fieldApplies } from '../schema/applies.ts';
import { breaksCarry } from '../schema/cautions.ts';
import type { Field, FieldOf, LoggingSchema } from '../schema/logging-schema.ts';
import { percentOf } from '../schema/read-cell.ts';
import { type Amount, type Cell, NONE, NOT_OBSERVED } from '../value/cell.ts';
import type { Cells } from '../value/row.ts';
import { alwaysSomething } from './meaning.ts';
import { type Refusal, refusal, type Said } from './said.ts';
import { labelOf, standsIn, typingIndex } from './typing-index.ts';

/** What items are applied to. */
export type Base = {
  readonly schema: LoggingSchema;
  /** What a field holds before the items change it, and what it keeps when nothing is said of it. */
  readonly cellOf: (field: Field) => Cell | undefined;
  /** The row that single keys need their mineral in, and what it is called: "above", "in 44–45". */
  readonly keysIn: Cells;
  readonly keysWhere: string;
  /** Nobody saw what is left unsaid: a void, a loss of return. */
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
    if ('code' in says && says.amount === 0) return false;
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
  if (field.kind === 'levels') return { levels: { [code]: Number(amount) } };
  return field.kind === 'percents' ? { percents: { [code]: amount } } : { code };
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
    const cell = items.length === 0 ? unsaid(base, field, lineEnd) : combine(base, field, items);
    if ('kind' in cell) return cell;
    cells[field.name] = cell;
    if (items.length === 0 && base.cellOf(field) !== undefined) carried.push(field.name);
  }
  return { kind: 'built', cells, carried };
}

/** The code that an item names, whatever it says of it. */
export function codeNamed({ says }: Said): string | undefined {
  if ('code' in says) return says.code;
  return 'code' in says.cell ? says.cell.code : undefined;
}

function unsaid(base: Base, field: Field, lineEnd: number): Cell | Refusal {
  const kept = base.cellOf(field);
  if (kept !== undefined) return kept;
  if (base.unseen || !field.required) return absentIn(base, field);
  return refusal(
    { position: lineEnd, length: 0 },
    `${field.label} is needed in this row`,
    `Say it, or ${field.name}'nr if it was not observed`,
  );
}

/** What a field says where nothing is kept of it. */
function absentIn(base: Base, field: Field): Cell {
  return base.unseen ? NOT_OBSERVED : { absent: field.unsaid };
}

/** What a field holds after its items: a whole cell said once, or the amounts of its codes changed one by one. */
function combine(base: Base, field: Field, items: readonly Said[]): Cell | Refusal {
  const twice = saidTwice(field, items);
  if (twice !== undefined) {
    const label = labelOf(base.schema, field, codeNamed(twice));
    return refusal(twice, `${label} is said twice`, 'Say it once: nothing was taken');
  }
  if (field.kind === 'code') return combineCode(base, field, items);
  const whole = items.map((item) => item.says).find((says) => 'cell' in says);
  if (whole !== undefined) return whole.cell;
  const before = base.cellOf(field) ?? absentIn(base, field);
  const unseen = takenOutUnseen(base.schema, field, before, items);
  if (unseen !== undefined) return unseen;
  if (field.kind === 'percents') {
    const percents = changed('percents' in before ? before.percents : {}, items);
    return emptied(field, percents, items) ?? overLimit(field, percents, items) ?? { percents };
  }
  const levels = changed('levels' in before ? before.levels : {}, items);
  return emptied(field, levels, items) ?? { levels };
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

/** The first item that says again what an earlier one said. A code field may name a first and a second. */
function saidTwice(field: Field, items: readonly Said[]): Said | undefined {
  const seen = new Set<string>();
  return items.find((item) => {
    const slot = slotOf(field, item);
    const clashes = seen.has(slot) || (seen.size > 0 && (slot === 'whole' || seen.has('whole')));
    seen.add(slot);
    return clashes;
  });
}

function slotOf(field: Field, { says }: Said): string {
  if ('code' in says) return field.kind === 'code' ? 'second' : `code ${says.code}`;
  return 'code' in says.cell ? 'first' : 'whole';
}

/** The first as said, else as it was; the second as said, else as it was, unless a first is said: a rock said alone is alone. */
function combineCode(base: Base, field: FieldOf<'code'>, items: readonly Said[]): Cell | Refusal {
  const before = base.cellOf(field);
  const whole = items.map((item) => item.says).find((says) => 'cell' in says);
  const share = items.find((item) => 'code' in item.says);
  const first = whole?.cell ?? before;
  if (share === undefined || !('code' in share.says)) return first ?? absentIn(base, field);
  const { code, amount } = share.says;
  const label = labelOf(base.schema, field, code);
  if (first === undefined || !('code' in first)) {
    return refusal(
      share,
      `${label} would be the second, and no first stands there`,
      'Say the first too, without an amount',
    );
  }
  if (first.code === code) {
    return refusal(
      share,
      `${label} is the first already`,
      'Say another one as the second, or leave its amount out',
    );
  }
  return amount === 0
    ? withoutSecond(first, whole === undefined, share, label)
    : { code: first.code, second: { code, percent: Number(amount) } };
}

function withoutSecond(
  first: Extract<Cell, { code: string }>,
  carriesSecond: boolean,
  share: Said,
  label: string,
): Cell | Refusal {
  const second = carriesSecond ? first.second : undefined;
  if (second?.code === codeNamed(share)) return { code: first.code };
  return refusal(share, `${label} is not the second`, 'A first said alone is alone: leave the 0 out');
}

/** The amounts with those of the items put in, and what they take out left out. */
function changed<A extends Amount>(
  before: { readonly [code: string]: A },
  items: readonly Said[],
): { readonly [code: string]: A } {
  const amounts = new Map(Object.entries(before));
  for (const { says } of items) {
    if (!('code' in says)) continue;
    if (says.amount === 0) amounts.delete(says.code);
    else amounts.set(says.code, says.amount as A);
  }
  return Object.fromEntries(amounts);
}

function emptied(
  field: Field,
  amounts: { readonly [code: string]: Amount },
  items: readonly Said[],
): Cell | Refusal | undefined {
  if (Object.keys(amounts).length > 0) return undefined;
  if (field.canBeNone) return NONE;
  const { problem, remedy } = alwaysSomething(field);
  return refusal(items.at(-1) ?? { position: 0, length: 0 }, problem, remedy);
}

function overLimit(
  field: FieldOf<'percents'>,
  percents: { readonly [code: string]: Amount },
  items: readonly Said[],
): Refusal | undefined {
  const sum = Object.values(percents).reduce((total: number, amount) => total + percentOf(amount, field), 0);
  if (sum <= field.sumLimitPercent + 1e-9) return undefined;
  return refusal(
    items.at(-1) ?? { position: 0, length: 0 },
    `${field.label} adds up to ${Number(sum.toFixed(3))} %, over the limit of ${field.sumLimitPercent}`,
    'Lower an amount, or take one out with 0',
  );
}

function keyWithoutMineral({ schema, keysWhere }: Base, item: Said): Refusal {
  const label = labelOf(schema, item.field, codeNamed(item));
  const { pair } = typingIndex(schema).strokesOf(item.field, codeNamed(item));
  const amount = item.text.slice(1);
  const problem = `${label} is not ${keysWhere}`;
  return pair === undefined
    ? refusal(item, problem, `Say it by its field: ${item.field.name}'`)
    : refusal(item, `${problem}: ${pair}${amount}`, `Type ${pair}${amount} if you see it`, [
        { text: `${pair}${amount}`, label },
      ]);
}

function notAsked(field: Field, item: Said): Refusal {
  return refusal(
    item,
    `${field.label} is not asked of a row like this`,
    field.onlyWhen === undefined ? 'Leave it out' : 'Say first what it depends on, or leave it out',
  );
}
