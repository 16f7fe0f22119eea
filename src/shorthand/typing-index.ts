import { type Code, type Field, type LoggingSchema, listOf } from '../schema/logging-schema.ts';
import { takesOf } from '../schema/strokes.ts';
import { amountsIn, sharesIn } from '../value/cell.ts';
import type { Cells } from '../value/row.ts';

/** What strokes name: a code in its field, or (without a code) an amount field itself. */
export type Typed = { readonly field: Field; readonly code?: Code };

/** The strokes that name one thing. */
type Strokes = { readonly pair?: string; readonly key?: string };

/** Everything that can be typed with a schema, by its strokes, and the strokes by what they name. */
export type TypingIndex = {
  readonly pairs: ReadonlyMap<string, Typed>;
  readonly keys: ReadonlyMap<string, Typed>;
  readonly fields: ReadonlyMap<string, Field>;
  /** Pairs of codes that can't be used anew. */
  readonly retired: ReadonlyMap<string, Code>;
  readonly strokesOf: (field: Field, code?: string) => Strokes;
};

/** Stands alone in a line: no return. No pair may be it. */
export const NO_RETURN = 'nr';

const indexes = new WeakMap<LoggingSchema, TypingIndex>();

/**
 * The typing index of a schema, made once. Where two things claim the same strokes the first in the order of the log
 * sheet has them (the schema check reports it); a list that two fields use is typed into the first of them.
 */
export function typingIndex(schema: LoggingSchema): TypingIndex {
  const known = indexes.get(schema);
  if (known !== undefined) return known;
  const made = makeIndex(schema);
  indexes.set(schema, made);
  return made;
}

function makeIndex(schema: LoggingSchema): TypingIndex {
  const pairs = new Map<string, Typed>();
  const keys = new Map<string, Typed>();
  const retired = new Map<string, Code>();
  const strokes = new Map<string, Strokes>();
  for (const typed of schema.fields.flatMap((field) => typedOf(schema, field))) {
    const { pair, key } = typed.code ?? strokesOfField(typed.field);
    if (typed.code?.retiredSince !== undefined) {
      if (pair !== undefined) retired.set(pair, typed.code);
      continue;
    }
    const ownsPair = pair !== undefined && isPair(pair) && !pairs.has(pair);
    const ownsKey = key !== undefined && /^[a-z]$/.test(key) && !keys.has(key) && takesAmount(typed);
    if (ownsPair) pairs.set(pair, typed);
    if (ownsKey) keys.set(key, typed);
    strokes.set(nameOf(typed.field, typed.code?.code), {
      ...(ownsPair ? { pair } : {}),
      ...(ownsKey ? { key } : {}),
    });
  }
  const fields = new Map(schema.fields.map((field) => [field.name, field]));
  return {
    pairs,
    keys,
    fields,
    retired,
    strokesOf: (field, code) => strokes.get(nameOf(field, code)) ?? {},
  };
}

function typedOf(schema: LoggingSchema, field: Field): readonly Typed[] {
  const list = listOf(schema, field);
  return list === undefined ? [{ field }] : list.codes.map((code) => ({ field, code }));
}

function strokesOfField(field: Field): Strokes {
  return field.kind === 'level' || field.kind === 'percent' || field.kind === 'flag' ? field : {};
}

function nameOf(field: Field, code: string | undefined): string {
  return code === undefined ? field.name : `${field.name} ${code}`;
}

function isPair(text: string): boolean {
  return /^[a-z]{2}$/.test(text) && text[0] !== text[1] && text !== NO_RETURN;
}

/** A single key always has an amount behind it, so a code that takes none can't have one. */
function takesAmount({ field }: Typed): boolean {
  return takesOf(field) !== 'no amount' || field.kind === 'flag';
}

/** True where what the strokes name stands in these cells, with an amount to change: what a single key asks for. */
export function standsIn(cells: Cells, field: Field, code: string | undefined): boolean {
  const cell = cells[field.name];
  if (cell === undefined) return false;
  if (code === undefined) return 'level' in cell || 'percent' in cell || 'flag' in cell;
  if ('code' in cell) return sharesIn(cell).some((share) => share.code === code);
  return Object.hasOwn(amountsIn(cell), code);
}

/** What a field or one of its codes is called, in lower-case words as they stand in the schema. */
export function labelOf(schema: LoggingSchema, field: Field, code?: string): string {
  if (code === undefined) return field.label;
  return listOf(schema, field)?.codes.find((each) => each.code === code)?.label ?? code;
}
