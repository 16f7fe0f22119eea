import type { Change, Id, Tables, Thing } from './document.ts';
import { hashJson } from './hash.ts';
import { canonicalJson, type Json, own, sameJson } from './json.ts';

/**
 * A question that a merge left, as it is stored; `null` is "not there". Its id and the order of its two values hang on nothing but the cell
 * and the values, so that two copies that each merged the other ask one question and not two. Which of the values is ours in the copy at
 * hand is told by what is in the cell.
 */
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

/** A cell that two copies changed differently, as a question to be stored: the value whose text comes first is `ours`. */
export function storedQuestion(
  about: Pick<StoredQuestion, 'table' | 'thing' | 'field'>,
  values: readonly [Json, Json],
): Thing & StoredQuestion {
  const [ours, theirs] =
    canonicalJson(values[0]) <= canonicalJson(values[1]) ? values : [values[1], values[0]];
  const { table, thing, field } = about;
  return { table, thing, ...(field === undefined ? {} : { field }), ours, theirs, state: 'open' };
}

/** The id of a question: made of what it asks, and of how often that was asked and settled before. */
export function questionId(question: StoredQuestion, isTaken: (id: Id) => boolean): Id {
  const { table, thing, field, ours, theirs } = question;
  const name = `asked-${hashJson([table, thing, field ?? null, ours, theirs]).slice(0, 16)}`;
  for (let round = 1; ; round += 1) {
    const id = round === 1 ? name : `${name}-${round}`;
    if (!isTaken(id)) return id;
  }
}

/** The question with its values the other way round. */
export function turned(question: StoredQuestion): StoredQuestion {
  const { settled } = question;
  const other = settled === 'ours' ? 'theirs' : 'ours';
  return {
    ...question,
    ours: question.theirs,
    theirs: question.ours,
    ...(settled === undefined ? {} : { settled: other }),
  };
}

/**
 * What settling one of two things adds to the removal of the other, or keeping both to the cut between them: each thing that is kept (a row; a
 * rod with its bags), as a settled question about the whole of it. Two copies that kept different ones then have two decisions, and a merge that sees both keeps both things.
 */
export function keptBySettling(
  tables: Tables,
  kept: readonly (readonly [table: string, id: Id])[],
): readonly Change[] {
  const taken = new Set(Object.keys(own(tables, QUESTIONS) ?? {}));
  return kept.flatMap(([table, thing]): readonly Change[] => {
    const stands = own(own(tables, table), thing);
    if (stands === undefined) return [];
    const asked = storedQuestion({ table, thing }, [null, stands]);
    const settled = asked.ours === null ? 'theirs' : 'ours';
    const id = questionId(asked, (name) => taken.has(name));
    taken.add(id);
    return [{ put: [QUESTIONS, id], thing: { ...asked, state: 'settled', settled } }];
  });
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
