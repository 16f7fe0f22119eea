import type { Change, DoneChange, Id, Table, Tables, Thing } from './document.ts';
import { own, setOwn } from './json.ts';

/** Tables on their way from one state to the next: each is copied once, when a change first touches it. */
export interface Draft {
  readonly from: Tables;
  readonly touched: Map<string, Record<Id, Thing>>;
  /** Tables that may have come to hold nothing: looking takes as long as copying one. */
  readonly thinned: Set<string>;
}

/** Where a change is: its table and the thing in it. */
export function target(change: Change | DoneChange): readonly [table: string, id: Id] {
  return 'put' in change ? change.put : 'patch' in change ? change.patch : change.remove;
}

/** The fields that a patch names, set or taken out. */
export function fieldsOf(patch: {
  readonly set?: Thing;
  readonly unset?: readonly string[];
}): readonly string[] {
  return [...Object.keys(patch.set ?? {}), ...(patch.unset ?? [])];
}

/** A draft that starts from tables, which stay as they are. */
export function draftOf(tables: Tables): Draft {
  return { from: tables, touched: new Map(), thinned: new Set() };
}

/** Makes one change in a draft: the change with what stood before it, or why it does not fit (and nothing is changed). */
export function makeChange(draft: Draft, change: Change): DoneChange | { readonly problem: string } {
  const [name, id] = target(change);
  const table = copyOf(draft, name);
  const there = own(table, id);
  if ('put' in change) {
    if (there !== undefined) return { problem: `${name} ${id} is already there` };
    setOwn(table, id, change.thing);
    draft.thinned.delete(name);
    return { put: change.put, thing: change.thing };
  }
  if (there === undefined) return { problem: `${name} ${id} is not there` };
  if ('remove' in change) {
    delete table[id];
    draft.thinned.add(name);
    return { remove: change.remove, before: there };
  }
  const twice = change.unset?.find((field) => own(change.set, field) !== undefined);
  if (twice !== undefined) return { problem: `${twice} of ${name} ${id} is both set and taken out` };
  setOwn(table, id, patched(there, change));
  return { ...change, before: before(there, change) };
}

/** The tables that a draft has come to. A table that holds nothing is left out. */
export function tablesOf(draft: Draft): Tables {
  const result: Record<string, Table> = { ...draft.from };
  for (const [name, table] of draft.touched) {
    if (draft.thinned.has(name) && isEmpty(table)) delete result[name];
    else setOwn(result, name, table);
  }
  return result;
}

/** A thing after a patch. */
export function patched(
  thing: Thing,
  patch: { readonly set?: Thing; readonly unset?: readonly string[] },
): Thing {
  const copy: Record<string, Thing[string]> = { ...thing, ...(patch.set ?? {}) };
  for (const field of patch.unset ?? []) delete copy[field];
  return copy;
}

function before(thing: Thing, patch: { readonly set?: Thing; readonly unset?: readonly string[] }): Thing {
  const stood: Record<string, Thing[string]> = {};
  for (const field of fieldsOf(patch)) {
    const value = own(thing, field);
    if (value !== undefined) setOwn(stood, field, value);
  }
  return stood;
}

function isEmpty(table: Table): boolean {
  for (const _ in table) return false;
  return true;
}

/**
 * The copy of a table in a draft. It is made key by key into an object without a prototype: four to seven times as fast as a spread
 * over a thousand keys, which is most of what an edit costs, and no key (`__proto__`) means anything in it.
 */
function copyOf(draft: Draft, name: string): Record<Id, Thing> {
  const copied = draft.touched.get(name);
  if (copied !== undefined) return copied;
  const from = own(draft.from, name) ?? {};
  const copy: Record<Id, Thing> = Object.create(null);
  let holds = false;
  for (const id in from) {
    copy[id] = from[id] as Thing;
    holds = true;
  }
  draft.touched.set(name, copy);
  if (!holds) draft.thinned.add(name);
  return copy;
}
