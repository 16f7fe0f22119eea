import { HOLE_RECORDS } from '../hole/records.ts';
import { type Interval, overlaps } from '../quantity/interval.ts';
import type { Document, Id, Thing } from '../record/document.ts';
import { own, sameJson } from '../record/json.ts';
import type { StoredQuestion } from '../record/questions.ts';
import { writersOf } from '../record/written.ts';

/**
 * The earlier record that a question sets against the one it is about: two copies each made one of the same metres, rod or depth. Undefined
 * where the question is about one thing that both changed.
 */
export function rivalOf(
  document: Document,
  { table, thing, field, theirs }: StoredQuestion,
): readonly [Id, Thing] | undefined {
  if (field === undefined || !HOLE_RECORDS.tables.has(table)) return undefined;
  const things = own(document.tables, table) ?? {};
  const asked = own(things, thing);
  if (asked === undefined) return undefined;
  // A value that someone wrote into this very record is no other record's.
  const [written] = writersOf(document, [{ table, id: thing, path: [field], value: theirs }]);
  if (written !== undefined) return undefined;
  const asIfOther = { ...asked, [field]: null };
  return Object.entries(things).findLast(
    ([id, each]) =>
      id !== thing &&
      sameJson(own(each, field) ?? null, theirs) &&
      HOLE_RECORDS.contradict(table, asIfOther, each).includes(field),
  );
}

/** The metres that two records share; undefined where one of them has none, or where the second covers all of the first. */
export function sharedInPart(one: Thing, other: Thing): Interval | undefined {
  if (typeof own(one, 'fromMm') !== 'number' || typeof own(other, 'fromMm') !== 'number') return undefined;
  const [a, b] = [one, other] as unknown as readonly [Interval, Interval];
  if (!overlaps(a, b) || (b.fromMm <= a.fromMm && a.toMm <= b.toMm)) return undefined;
  return { fromMm: Math.max(a.fromMm, b.fromMm), toMm: Math.min(a.toMm, b.toMm) } as Interval;
}
