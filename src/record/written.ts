import { countHeld, entriesBeyond, isMerge } from './ancestry.ts';
import { replay } from './chain.ts';
import type { Change, Document, DoneChange, Entry, Id, Tables, Thing } from './document.ts';
import { fieldsOf, target } from './draft.ts';
import { isObject, own, sameJson } from './json.ts';
import { difference } from './outside.ts';
import { QUESTIONS, questionsIn } from './questions.ts';

/**
 * Cells that were written: by table and thing, or `all` of it where it was put or removed. A cell is a field, or a member of a
 * field that holds an object (a row's `cells`): two people who amend two minerals of one metre amend two cells.
 */
type Cells = Map<string, Set<string> | 'all'>;

/** A cell of a thing: a field, and the member of it where it holds an object before and after. */
export type Path = readonly [field: string, member?: string];

const cellKey = (table: string, id: Id): string => JSON.stringify([table, id]);

/** Asks whether a cell of a thing was written, or anything of the thing; a put or a removal writes all of it. */
export type WasWritten = (table: string, id: Id, path?: Path) => boolean;

/**
 * The cells that a document wrote and a copy holding the entries `held` has not seen. What was written and taken back since
 * counts for nothing, except up to a merge: there a cell may stand at an old value because somebody put it back on purpose.
 */
export function unseenCells(document: Document, held: ReadonlySet<string>): WasWritten {
  const { history, tables } = document;
  const seen = countHeld(history, held);
  const joined = Math.max(seen, 1 + history.findLastIndex(isMerge));
  const cells: Cells = new Map();
  for (const entry of entriesBeyond(history.slice(seen, joined), held)) addEntry(cells, entry);
  const before = replay(history.slice(0, joined));
  for (const change of difference(before, tables)) add(cells, change, before);
  return (table, id, path) => has(cells, table, id, path);
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

/** Adds what an entry wrote. A merge wrote nothing: what it changes was written by entries of the other copy, or is a question. */
function addEntry(cells: Cells, entry: Entry): void {
  if (!isMerge(entry)) for (const change of entry.changes) add(cells, change);
}

/** `before` holds what stood before a change that does not say it itself. */
function add(cells: Cells, change: Change | DoneChange, before: Tables = {}): void {
  const [table, id] = target(change);
  if (!('patch' in change)) {
    cells.set(cellKey(table, id), 'all');
    return;
  }
  const stood = 'before' in change ? change.before : own(own(before, table), id);
  for (const path of pathsOf(change, stood ?? {})) addPath(cells, table, id, path);
}

/** The cells that a patch writes: whole fields, or the members that differ where an object takes the place of an object. */
function pathsOf(
  patch: { readonly set?: Thing; readonly unset?: readonly string[] },
  before: Thing,
): readonly Path[] {
  return fieldsOf(patch).flatMap((field): readonly Path[] => {
    const was = own(before, field);
    const is = own(patch.set, field);
    if (!isObject(was) || !isObject(is)) return [[field]];
    const members = new Set([...Object.keys(was), ...Object.keys(is)]);
    return [...members]
      .filter((member) => !sameJson(own(was, member), own(is, member)))
      .map((member) => [field, member]);
  });
}

const pathKey = ([field, member]: Path): string =>
  JSON.stringify(member === undefined ? [field] : [field, member]);

function addPath(cells: Cells, table: string, id: Id, path: Path): void {
  const key = cellKey(table, id);
  const written = cells.get(key);
  if (written === 'all') return;
  cells.set(key, (written ?? new Set<string>()).add(pathKey(path)));
}

/** True where a cell of the thing was written, by itself or with its whole field; or, with no cell named, anything of it. */
function has(cells: Cells, table: string, id: Id, path?: Path): boolean {
  const written = cells.get(cellKey(table, id));
  if (written === undefined || written === 'all' || path === undefined) return written !== undefined;
  const [field, member] = path;
  if (written.has(pathKey([field])) || written.has(pathKey(path))) return true;
  if (member !== undefined) return false;
  const within = `${JSON.stringify([field]).slice(0, -1)},`;
  return [...written].some((each) => each.startsWith(within));
}
