import type { Id, Tables, Thing } from './document.ts';
import { type Json, own, sameJson } from './json.ts';
import type { Path, WasWritten } from './written.ts';

/** A question that a merge left, as it is stored; `null` is "not there". */
export interface StoredQuestion {
  readonly table: string;
  readonly thing: Id;
  readonly field?: string;
  readonly ours: Json;
  readonly theirs: Json;
  readonly state: 'open' | 'settled';
  readonly settled?: 'ours' | 'theirs';
}

/** The table that questions stand in. */
export const QUESTIONS = 'questions';

/** The questions of a document with their ids, in the order they were made. */
export function questionsIn(tables: Tables): readonly (readonly [Id, StoredQuestion])[] {
  return Object.entries(own(tables, QUESTIONS) ?? {}) as unknown as readonly (readonly [
    Id,
    StoredQuestion,
  ])[];
}

/** True of a thing of that table that is settled. */
export function isSettled(question: Thing): boolean {
  return question.state === 'settled';
}

/** True of two questions about the same cell and the same two values, whichever copy asked: each of two merges asks its own. */
export function isSameAsked(a: StoredQuestion, b: StoredQuestion): boolean {
  if (a.table !== b.table || a.thing !== b.thing || a.field !== b.field) return false;
  return isTurned(a, b) || (sameJson(a.ours, b.ours) && sameJson(a.theirs, b.theirs));
}

/** True where what one question calls ours the other calls theirs. */
function isTurned(a: StoredQuestion, b: StoredQuestion): boolean {
  return sameJson(a.ours, b.theirs) && sameJson(a.theirs, b.ours);
}

/** What settling a question writes into it. `chosen` is as `of` calls it, which may be the other way round. */
export function settledAs(question: StoredQuestion, chosen: 'ours' | 'theirs', of: StoredQuestion): Thing {
  const other = chosen === 'ours' ? 'theirs' : 'ours';
  return { state: 'settled', settled: isTurned(question, of) ? other : chosen };
}

/** What a copy wrote, with the cells of which it settled a question: who keeps ours has decided on that cell, though it stands as before. */
export function withSettled(tables: Tables, wrote: WasWritten): WasWritten {
  const decided = new Set(
    questionsIn(tables)
      .filter(([id, { state }]) => state === 'settled' && wrote(QUESTIONS, id))
      .map(([, { table, thing, field }]) => JSON.stringify([table, thing, field ?? null])),
  );
  if (decided.size === 0) return wrote;
  return (table: string, id: Id, path?: Path) =>
    wrote(table, id, path) || decided.has(JSON.stringify([table, id, path?.join('.') ?? null]));
}
