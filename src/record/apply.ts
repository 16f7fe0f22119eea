import type { Change, Deed, Document, DoneChange, Entry, Id, Tables, Thing } from './document.ts';
import { draftOf, fieldsOf, makeChange, patched, tablesOf, target } from './draft.ts';
import { sealed } from './hash.ts';
import { type Json, own, sameJson, setOwn } from './json.ts';

/** What a list of changes made of tables; `problem` (and nothing else changed) where one of them does not fit. */
export type Applied =
  | { readonly ok: true; readonly tables: Tables; readonly done: readonly DoneChange[] }
  | { readonly ok: false; readonly problem: string };

/** Applies changes in order, all or none. Refuses a put over a thing, and a patch or removal of none. */
export function applyChanges(tables: Tables, changes: readonly Change[]): Applied {
  const draft = draftOf(tables);
  const done: DoneChange[] = [];
  for (const change of changes) {
    const made = makeChange(draft, change);
    if ('problem' in made) return { ok: false, problem: made.problem };
    done.push(made);
  }
  return { ok: true, tables: tablesOf(draft), done };
}

/** The changes that take done changes back, in the order to apply them. */
export function inverse(done: readonly DoneChange[]): readonly Change[] {
  return [...done].reverse().map((change): Change => {
    if ('put' in change) return { remove: change.put };
    if ('remove' in change) return { put: change.remove, thing: change.before };
    const unset = fieldsOf(change).filter((field) => own(change.before, field) === undefined);
    return {
      patch: change.patch,
      ...(Object.keys(change.before).length === 0 ? {} : { set: change.before }),
      ...(unset.length === 0 ? {} : { unset }),
    };
  });
}

/** A document after a deed's changes, with the new link of its history; or why they do not fit. */
export function apply(
  document: Document,
  deed: Deed,
  changes: readonly Change[],
):
  | { readonly ok: true; readonly document: Document; readonly entry: Entry }
  | { readonly ok: false; readonly problem: string } {
  const applied = applyChanges(document.tables, changes);
  if (!applied.ok) return applied;
  const last = document.history.at(-1);
  const entry = sealed({
    ...deedOf(deed),
    changes: applied.done,
    follows: last === undefined ? [] : [last.hash],
  });
  return {
    ok: true,
    entry,
    document: { ...document, tables: applied.tables, history: [...document.history, entry] },
  };
}

/** Only the deed of an edit or an entry, whatever else it carries. */
export function deedOf(deed: Deed): Deed {
  return {
    edit: deed.edit,
    at: deed.at,
    by: deed.by,
    what: deed.what,
    ...(deed.undoes === undefined ? {} : { undoes: deed.undoes }),
    ...(deed.redoes === undefined ? {} : { redoes: deed.redoes }),
  };
}

/** How an entry left one thing: as a whole, or only the fields it touched. Undefined is "not there". */
type Left =
  | { readonly table: string; readonly id: Id; readonly thing: Thing | undefined }
  | {
      readonly table: string;
      readonly id: Id;
      readonly fields: { readonly [field: string]: Json | undefined };
    };

/**
 * Whether an entry can still be taken back: everything it touched stands as it left it. Returns undefined when it can,
 * else the reason in words. A later change to another field of a thing that it only patched is not a hindrance.
 */
export function hindrance(document: Document, entry: Entry): string | undefined {
  for (const left of leftBy(entry).values()) {
    const reason = changedSince(own(own(document.tables, left.table), left.id), left);
    if (reason !== undefined) return reason;
  }
  return undefined;
}

function changedSince(there: Thing | undefined, left: Left): string | undefined {
  const name = `${left.table} ${left.id}`;
  if ('thing' in left && left.thing === undefined)
    return there === undefined ? undefined : `${name} has been made again since`;
  if (there === undefined) return `${name} has been taken out since`;
  if ('thing' in left) return sameJson(there, left.thing) ? undefined : `${name} has been changed since`;
  const field = Object.keys(left.fields).find((each) => !sameJson(own(there, each), own(left.fields, each)));
  if (field === undefined) return undefined;
  return `${field} of ${name} has been ${own(left.fields, field) === undefined ? 'set' : 'changed'} since`;
}

/** What an entry left behind, by thing: an entry may touch one thing more than once, and only the last of it counts. */
function leftBy(entry: Entry): ReadonlyMap<string, Left> {
  const left = new Map<string, Left>();
  for (const change of entry.changes) {
    const key = JSON.stringify(target(change));
    left.set(key, leftAfter(left.get(key), change));
  }
  return left;
}

function leftAfter(earlier: Left | undefined, change: DoneChange): Left {
  const [table, id] = target(change);
  if ('put' in change) return { table, id, thing: change.thing };
  if ('remove' in change) return { table, id, thing: undefined };
  if (earlier !== undefined && 'thing' in earlier && earlier.thing !== undefined)
    return { table, id, thing: patched(earlier.thing, change) };
  const fields: Record<string, Json | undefined> = {
    ...(earlier !== undefined && 'fields' in earlier ? earlier.fields : {}),
  };
  for (const field of fieldsOf(change)) setOwn(fields, field, own(change.set, field));
  return { table, id, fields };
}
