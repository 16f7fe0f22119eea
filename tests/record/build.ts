import fc from 'fast-check';
import { apply } from '../../src/record/apply.ts';
import {
  type Change,
  type Deed,
  type Document,
  emptyDocument,
  type Tables,
  type Thing,
} from '../../src/record/document.ts';
import { type Json, own } from '../../src/record/json.ts';

/** Names that every object inherits, beside ordinary ones: a file may hold any of them. */
export const HOSTILE = ['__proto__', 'constructor', 'toString', 'hasOwnProperty'] as const;
export const aName = fc.constantFrom('a', 'b', 'c', ...HOSTILE);
export const aValue: fc.Arbitrary<Json> = fc.oneof(
  fc.constantFrom<Json>(null, 0, 1, 'gone', '', false, {}, []),
  fc.jsonValue({ maxDepth: 2 }).map((value) => value as Json),
);

/** A thing, its members set so that hostile names are members like any other. */
export const aThing: fc.Arbitrary<Thing> = fc
  .array(fc.tuple(aName, aValue), { maxLength: 4 })
  .map((members) => Object.fromEntries(members));

/** A wish for a change; what it becomes depends on what is there. */
export interface Wish {
  readonly table: string;
  readonly id: string;
  readonly thing: Thing;
  readonly take: 'all' | readonly string[];
}

export const aWish: fc.Arbitrary<Wish> = fc.record({
  table: fc.constantFrom('rows', '__proto__'),
  id: fc.constantFrom('k1-1', 'k1-2', '__proto__', 'constructor'),
  thing: aThing,
  take: fc.oneof(fc.constant('all' as const), fc.array(aName, { maxLength: 2 })),
});

/** The change that fits what is there: a put where nothing is, else a patch or a removal. */
export function changeFor(tables: Tables, wish: Wish): Change {
  const where = [wish.table, wish.id] as const;
  if (own(own(tables, wish.table), wish.id) === undefined) return { put: where, thing: wish.thing };
  if (wish.take === 'all') return { remove: where };
  const set = Object.fromEntries(Object.entries(wish.thing).filter(([field]) => !wish.take.includes(field)));
  return { patch: where, set, unset: [...new Set(wish.take)] };
}

/** A deed by its number: the clock may say anything, so it runs backwards here. */
export const deed = (number: number, more: Partial<Deed> = {}): Deed => ({
  edit: `k1-${number}`,
  at: `2026-03-14T07:${String(59 - (number % 60)).padStart(2, '0')}:00+08:00`,
  by: 'Ada',
  what: `edit ${number}`,
  ...more,
});

/** The document after an edit; throws where the changes don't fit. */
export function edited(document: Document, number: number, ...changes: readonly Change[]): Document {
  const result = apply(document, deed(number), changes);
  if (!result.ok) throw new Error(result.problem);
  return result.document;
}

export const HOLE = emptyDocument({ kind: 'hole', id: 'ZQRC004' });

/** A document made of wishes, one edit each. */
export function documentOf(wishes: readonly Wish[], from: Document = HOLE, firstNumber = 1): Document {
  return wishes.reduce(
    (document, wish, index) => edited(document, firstNumber + index, changeFor(document.tables, wish)),
    from,
  );
}

export const aDocument = fc.array(aWish, { minLength: 1, maxLength: 12 }).map((wishes) => documentOf(wishes));
