import type { Change, Deed, Document, DoneChange, Entry, Id, Table, Tables, Thing } from './document.ts';
import { sealed } from './hash.ts';
import { sameJson } from './json.ts';

/** What a list of changes made of tables; `problem` (and nothing else changed) where one of them does not fit. */
export type Applied =
  | { readonly ok: true; readonly tables: Tables; readonly done: readonly DoneChange[] }
  | { readonly ok: false; readonly problem: string };

/** Where a change is: its table and the thing in it. */
export function target(change: Change | DoneChange): readonly [table: string, id: Id] {
  return 'put' in change ? change.put : 'patch' in change ? change.patch : change.remove;
}

/** Applies changes in order, all or none. Refuses a put over a thing, and a patch or removal of none. */
export function applyChanges(tables: Tables, changes: readonly Change[]): Applied {
  const touched = new Map<string, Record<Id, Thing>>();
  const tableOf = (name: string): Record<Id, Thing> => {
    const copied = touched.get(name);
    if (copied) return copied;
    const copy: Record<Id, Thing> = { ...(tables[name] ?? {}) };
    touched.set(name, copy);
    return copy;
  };
  const done: DoneChange[] = [];
  for (const change of changes) {
    const [name, id] = target(change);
    const table = tableOf(name);
    const there = Object.hasOwn(table, id) ? table[id] : undefined;
    if ('put' in change) {
      if (there !== undefined) return { ok: false, problem: `${name} ${id} is already there` };
      table[id] = change.thing;
      done.push({ put: change.put, thing: change.thing });
    } else if (there === undefined) {
      return { ok: false, problem: `${name} ${id} is not there` };
    } else if ('patch' in change) {
      table[id] = patched(there, change);
      done.push({ ...change, before: fieldsBefore(there, change) });
    } else {
      delete table[id];
      done.push({ remove: change.remove, before: there });
    }
  }
  return { ok: true, tables: withTables(tables, touched), done };
}

function withTables(tables: Tables, touched: ReadonlyMap<string, Table>): Tables {
  const result: Record<string, Table> = { ...tables };
  for (const [name, table] of touched) {
    if (Object.keys(table).length === 0) delete result[name];
    else result[name] = table;
  }
  return result;
}

function patched(thing: Thing, change: { readonly set?: Thing; readonly unset?: readonly string[] }): Thing {
  const copy: Record<string, Thing[string]> = { ...thing, ...(change.set ?? {}) };
  for (const field of change.unset ?? []) delete copy[field];
  return copy;
}

function fieldsBefore(
  thing: Thing,
  change: { readonly set?: Thing; readonly unset?: readonly string[] },
): Thing {
  const before: Record<string, Thing[string]> = {};
  for (const field of [...Object.keys(change.set ?? {}), ...(change.unset ?? [])]) {
    const value = thing[field];
    if (value !== undefined) before[field] = value;
  }
  return before;
}

/** The changes that take done changes back, in the order to apply them. */
export function inverse(done: readonly DoneChange[]): readonly Change[] {
  return [...done].reverse().map((change): Change => {
    if ('put' in change) return { remove: change.put };
    if ('remove' in change) return { put: change.remove, thing: change.before };
    const said = [...Object.keys(change.set ?? {}), ...(change.unset ?? [])];
    const unset = said.filter((field) => change.before[field] === undefined);
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

/**
 * Whether an entry can still be taken back: everything it touched stands as it left it. Returns undefined when it can,
 * else the reason in words. A later change to another field of the same thing is no hindrance.
 */
export function hindrance(document: Document, entry: Entry): string | undefined {
  for (const change of entry.changes) {
    const [name, id] = target(change);
    const there = document.tables[name]?.[id];
    if ('remove' in change) {
      if (there !== undefined) return `${name} ${id} has been made again since`;
      continue;
    }
    if (there === undefined) return `${name} ${id} has been taken out since`;
    if ('put' in change) {
      if (!sameJson(there, change.thing)) return `${name} ${id} has been changed since`;
      continue;
    }
    for (const [field, value] of Object.entries(change.set ?? {})) {
      if (!sameJson(there[field], value)) return `${field} of ${name} ${id} has been changed since`;
    }
    for (const field of change.unset ?? []) {
      if (there[field] !== undefined) return `${field} of ${name} ${id} has been set since`;
    }
  }
  return undefined;
}
