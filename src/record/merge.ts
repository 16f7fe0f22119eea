import { applyChanges, deedOf, target } from './apply.ts';
import { replay } from './chain.ts';
import type { Change, Deed, Document, Entry, Id, Table, Tables, Thing } from './document.ts';
import { sealed } from './hash.ts';
import type { Json } from './json.ts';
import { sameJson } from './json.ts';
import { difference } from './outside.ts';

/** How another copy of a document stands to ours, decided by chain prefix and never by a clock. */
export type Standing = 'same' | 'newer' | 'older' | 'diverged' | 'unrelated';

/** A cell that both copies changed, each to something else. `undefined` in JSON is "not there". */
export interface Question {
  readonly table: string;
  readonly id: Id;
  /** The field, or undefined where one copy took the thing out and the other changed it. */
  readonly field?: string;
  readonly ours: Json | undefined;
  readonly theirs: Json | undefined;
}

/** How many entries two histories share from the start. */
export function sharedEntries(ours: readonly Entry[], theirs: readonly Entry[]): number {
  let shared = 0;
  while (shared < ours.length && shared < theirs.length && ours[shared]?.hash === theirs[shared]?.hash)
    shared += 1;
  return shared;
}

/** How their copy stands to ours: newer holds all of ours and more. */
export function standingOf(ours: Document, theirs: Document): Standing {
  const shared = sharedEntries(ours.history, theirs.history);
  if (ours.history.length > 0 && theirs.history.length > 0 && shared === 0) return 'unrelated';
  if (shared === ours.history.length && shared === theirs.history.length) return 'same';
  if (shared === ours.history.length) return 'newer';
  if (shared === theirs.history.length || containsTip(ours.history, theirs.history)) return 'older';
  return 'diverged';
}

function containsTip(history: readonly Entry[], other: readonly Entry[]): boolean {
  const tip = other.at(-1)?.hash;
  return tip !== undefined && history.some((entry) => entry.merged?.some((inner) => inner.hash === tip));
}

/**
 * Merges a diverged copy into ours, by id and field. What only one copy changed is taken; where both changed the same
 * cell differently ours stays and a question says what theirs was, so nothing is lost: their entries are kept whole in
 * the merge entry. `questionThing` turns each question into a thing of the table `questions`, under an id the caller gives.
 */
export function merge(
  ours: Document,
  theirs: Document,
  deed: Deed,
  newId: () => Id,
): { readonly document: Document; readonly questions: readonly Question[] } {
  const shared = sharedEntries(ours.history, theirs.history);
  const base = replay(ours.history.slice(0, shared));
  const { changes, questions } = reconcile(base, ours.tables, theirs.tables);
  const asked: Change[] = questions.map((question) => ({
    put: ['questions', newId()],
    thing: questionThing(question),
  }));
  const applied = applyChanges(ours.tables, [...changes, ...asked]);
  if (!applied.ok) throw new Error(`a merge must fit the copy it was made for: ${applied.problem}`);
  const merged = theirs.history.slice(shared);
  const follows = [ours.history.at(-1)?.hash, merged.at(-1)?.hash].filter(
    (hash): hash is string => hash !== undefined,
  );
  const entry = sealed({ ...deedOf(deed), changes: applied.done, follows, merged });
  return { document: { ...ours, tables: applied.tables, history: [...ours.history, entry] }, questions };
}

function questionThing(question: Question): Thing {
  return {
    table: question.table,
    thing: question.id,
    ...(question.field === undefined ? {} : { field: question.field }),
    ours: question.ours ?? null,
    theirs: question.theirs ?? null,
    state: 'open',
  };
}

function reconcile(
  base: Tables,
  ours: Tables,
  theirs: Tables,
): { readonly changes: Change[]; readonly questions: Question[] } {
  const changes: Change[] = [];
  const questions: Question[] = [];
  for (const change of difference(base, theirs)) {
    const [table, id] = target(change);
    const mine: Thing | undefined = (ours[table] as Table | undefined)?.[id];
    const was: Thing | undefined = (base[table] as Table | undefined)?.[id];
    if ('put' in change) {
      if (mine === undefined) changes.push(change);
      else if (!sameJson(mine, change.thing)) questions.push({ table, id, ours: mine, theirs: change.thing });
    } else if ('remove' in change) {
      if (mine === undefined) continue;
      if (sameJson(mine, was)) changes.push(change);
      else questions.push({ table, id, ours: mine, theirs: undefined });
    } else if (mine === undefined) {
      questions.push({ table, id, ours: undefined, theirs: { ...(was ?? {}), ...(change.set ?? {}) } });
    } else {
      mergePatch(change, was ?? {}, mine, changes, questions);
    }
  }
  return { changes, questions };
}

function mergePatch(
  change: { readonly patch: readonly [string, Id]; readonly set?: Thing; readonly unset?: readonly string[] },
  was: Thing,
  mine: Thing,
  changes: Change[],
  questions: Question[],
): void {
  const [table, id] = change.patch;
  const set: Record<string, Json> = {};
  const unset: string[] = [];
  for (const field of [...Object.keys(change.set ?? {}), ...(change.unset ?? [])]) {
    const theirs = change.set?.[field];
    if (sameJson(mine[field], theirs)) continue;
    if (!sameJson(mine[field], was[field])) questions.push({ table, id, field, ours: mine[field], theirs });
    else if (theirs === undefined) unset.push(field);
    else set[field] = theirs;
  }
  if (Object.keys(set).length === 0 && unset.length === 0) return;
  changes.push({
    patch: change.patch,
    ...(Object.keys(set).length === 0 ? {} : { set }),
    ...(unset.length === 0 ? {} : { unset }),
  });
}
