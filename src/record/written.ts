import { countHeld } from './ancestry.ts';
import { replay } from './chain.ts';
import type { Change, Document, DoneChange, Entry, Id } from './document.ts';
import { fieldsOf, target } from './draft.ts';
import { difference } from './outside.ts';

/** Cells that were written: by table and thing, its fields, or `all` of it where it was put or removed. */
type Cells = Map<string, Set<string> | 'all'>;

const cellKey = (table: string, id: Id): string => JSON.stringify([table, id]);

const NOTHING_HELD: ReadonlySet<string> = new Set();

/** Asks whether a field of a thing was written, or anything of the thing; a put or a removal writes all of it. */
export type WasWritten = (table: string, id: Id, field?: string) => boolean;

/**
 * The cells that a document wrote and a copy holding the entries `held` has not seen. What was written and taken back since
 * counts for nothing, except past a merge: there a cell may stand at an old value because somebody put it back on purpose.
 */
export function unseenCells(document: Document, held: ReadonlySet<string>): WasWritten {
  const count = countHeld(document.history, held);
  const tail = document.history.slice(count);
  const cells: Cells = new Map();
  if (tail.some((entry) => entry.merged !== undefined)) {
    for (const entry of tail) addEntry(cells, entry, held);
    for (const change of difference(replay(document.history), document.tables)) add(cells, change);
  } else {
    const seen = replay(document.history.slice(0, count));
    for (const change of difference(seen, document.tables)) add(cells, change);
  }
  return (table, id, field) => has(cells, table, id, field);
}

/** Adds what an entry wrote. A merge wrote what it took from the other copy only as far as that copy's entries are unseen. */
function addEntry(cells: Cells, entry: Entry, held: ReadonlySet<string>): void {
  if (entry.merged === undefined) {
    for (const change of entry.changes) add(cells, change);
    return;
  }
  const unseen: Cells = new Map();
  for (const inner of entry.merged) if (!held.has(inner.hash)) addEntry(unseen, inner, held);
  const taken: Cells = new Map();
  for (const inner of entry.merged) addEntry(taken, inner, NOTHING_HELD);
  const wrote = (table: string, id: Id, field?: string): boolean =>
    has(unseen, table, id, field) || !has(taken, table, id, field);
  for (const change of entry.changes) {
    const [table, id] = target(change);
    if (!('patch' in change)) {
      if (wrote(table, id)) add(cells, change);
    } else
      for (const field of fieldsOf(change)) if (wrote(table, id, field)) addField(cells, table, id, field);
  }
}

function add(cells: Cells, change: Change | DoneChange): void {
  const [table, id] = target(change);
  if (!('patch' in change)) cells.set(cellKey(table, id), 'all');
  else for (const field of fieldsOf(change)) addField(cells, table, id, field);
}

function addField(cells: Cells, table: string, id: Id, field: string): void {
  const key = cellKey(table, id);
  const written = cells.get(key);
  if (written === 'all') return;
  cells.set(key, (written ?? new Set<string>()).add(field));
}

/** True where a field of the thing was written, or, with no field named, anything of it. */
function has(cells: Cells, table: string, id: Id, field?: string): boolean {
  const written = cells.get(cellKey(table, id));
  if (written === undefined || written === 'all' || field === undefined) return written !== undefined;
  return written.has(field);
}
