import {
  type Code,
  type Field,
  type FieldOf,
  type LoggingSchema,
  listOf,
  qualifiersOf,
} from '../schema/logging-schema.ts';
import { takesOf } from '../schema/strokes.ts';
import { amountsIn, sharesIn } from '../value/cell.ts';
import type { Cells } from '../value/row.ts';

/** What strokes name: a code in its field, or (without a code) an amount field itself. */
export type Typed = { readonly field: Field; readonly code?: Code };

/** A code that says more of another one. */
export type Quality = { readonly list: string; readonly code: Code };

/** The strokes that name one thing. */
type Strokes = { readonly pair?: string; readonly key?: string };

/** Everything that can be typed with a schema, by its strokes, and the strokes by what they name. */
export type TypingIndex = {
  readonly pairs: ReadonlyMap<string, Typed>;
  readonly keys: ReadonlyMap<string, Typed>;
  readonly fields: ReadonlyMap<string, Field>;
  /** Pairs that say more of what comes before them, with the list that each is from. */
  readonly qualities: ReadonlyMap<string, Quality>;
  /** Each list that says more of something, as if it were a field, by the name that types it (`habits'dis`). */
  readonly qualityFields: ReadonlyMap<string, FieldOf<'code'>>;
  /** Pairs of codes that can't be used again. */
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
  const qualities = new Map<string, Quality>();
  const qualityFields = qualityFieldsOf(schema);
  for (const field of qualityFields.values()) {
    for (const code of listOf(schema, field)?.codes ?? []) {
      const { pair } = code;
      if (pair === undefined || !isPair(pair)) continue;
      if (code.retiredSince !== undefined) retired.set(pair, code);
      // A list that a field logs too keeps its pairs there: they qualify only right behind one of that list.
      else if (pairs.get(pair)?.code === code) strokes.set(nameOf(field, code.code), { pair });
      else if (!pairs.has(pair) && !qualities.has(pair)) {
        qualities.set(pair, { list: field.list, code });
        strokes.set(nameOf(field, code.code), { pair });
      }
    }
  }
  return {
    pairs,
    keys,
    fields,
    qualities,
    qualityFields,
    retired,
    strokesOf: (field, code) => strokes.get(nameOf(field, code)) ?? {},
  };
}

/** The lists that qualify something, each as a field of one code that may be none. */
function qualityFieldsOf(schema: LoggingSchema): ReadonlyMap<string, FieldOf<'code'>> {
  const lists = new Set(schema.fields.flatMap((field) => qualifiersOf(field).map(({ list }) => list)));
  const as = {
    required: false,
    carry: false,
    unsaid: 'not observed',
    canBeNone: true,
    second: false,
  } as const;
  return new Map(
    [...lists]
      .filter((list) => schema.lists[list] !== undefined)
      .map((list) => {
        const name = list.toLowerCase();
        return [name, { ...as, kind: 'code', name, label: schema.lists[list]?.label ?? list, list }];
      }),
  );
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
  if (field.kind === 'events') return false;
  return takesOf(field) !== 'no amount' || field.kind === 'flag';
}

/**
 * True where what the strokes name stands in these cells, with an amount to change: what a single key asks for. In a first row, with no cells
 * above it, a field that every row has may be named by its key: it has to be said, so a slip adds nothing.
 */
export function standsIn(cells: Cells | undefined, field: Field, code: string | undefined): boolean {
  if (cells === undefined) return field.required && code === undefined;
  const cell = cells[field.name];
  if (cell === undefined) return false;
  if (code === undefined) return 'level' in cell || 'percent' in cell || 'flag' in cell;
  if ('code' in cell) return sharesIn(cell).some((share) => share.code === code);
  return Object.hasOwn(amountsIn(cell), code);
}

/** What a field or one of its codes is called, in lower-case words as they are in the schema. */
export function labelOf(schema: LoggingSchema, field: Field, code?: string): string {
  if (code === undefined) return field.label;
  return listOf(schema, field)?.codes.find((each) => each.code === code)?.label ?? code;
}
