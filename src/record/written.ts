import { countHeld, entriesBeyond, everyEntry, isMerge } from './ancestry.ts';
import { hindrance, inverse } from './apply.ts';
import { replay } from './chain.ts';
import type { Change, Document, DoneChange, Entry, Id, Tables, Thing } from './document.ts';
import { fieldsOf, target } from './draft.ts';
import { isObject, type Json, type JsonObject, own, sameJson } from './json.ts';
import { difference } from './outside.ts';
import { isSettled, QUESTIONS, questionsIn } from './questions.ts';

/**
 * One thing as an entry wrote it, by thing: a change, and what stood before. A cell is a field, or a member of a field that holds an
 * object (a row's `cells`): two people who amend two minerals of one metre amend two cells.
 */
type Writings = Map<string, { readonly change: Change | DoneChange; readonly before: Thing }[]>;

/**
 * A cell of a thing: a field, and the member of it where it holds an object before and after. Where such a member holds things by name
 * (see {@link namedThings}), each of them is a cell of its own: the path goes on with what holds them and with its name.
 */
export type Path = readonly [field: string, ...members: string[]];

/**
 * Things by name, where that is all that a value holds: `{ events: { WST: { atMm: 44600 } } }` gives `events` and the one thing in it.
 * Two people who put one each into it have said two things, and neither said anything of the other's.
 */
export function namedThings(
  value: Json | undefined,
): { readonly holder: string; readonly things: JsonObject } | undefined {
  if (!isObject(value)) return undefined;
  const [[holder = '', things] = [], ...rest] = Object.entries(value);
  if (rest.length > 0 || !isObject(things) || !Object.values(things).every(isObject)) return undefined;
  return { holder, things };
}

const thingKey = (table: string, id: Id): string => JSON.stringify([table, id]);

/** Asks whether a cell of a thing was written, or anything of the thing; a put or a removal writes all of it. */
export type WasWritten = (table: string, id: Id, path?: Path) => boolean;

/**
 * The cells that a document wrote and a copy holding the entries `held` has not seen. Up to a merge only what still stands counts: of
 * two values that a merge brought together one lies in a question, and whoever changed the other knew the one that stands. There a cell
 * may stand at an old value because someone put it back on purpose. What was written and taken back since counts for nothing.
 */
export function unseenCells(document: Document, held: ReadonlySet<string>): WasWritten {
  const { history, tables } = document;
  const seen = countHeld(history, held);
  const joined = Math.max(seen, 1 + history.findLastIndex(isMerge));
  const writings: Writings = new Map();
  for (const entry of entriesBeyond(history.slice(seen, joined), held)) addEntry(writings, entry);
  const before = replay(history.slice(0, joined));
  for (const change of difference(before, tables)) add(writings, change, before);
  return (table, id, path) => {
    const now = own(own(tables, table), id);
    return (writings.get(thingKey(table, id)) ?? []).some((writing) => stands(writing, now, path));
  };
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
    wrote(table, id, path) || decided.has(JSON.stringify([table, id, path?.slice(0, 2).join('.') ?? null]));
}

/**
 * The entry that last wrote a value (`null`: not there) into a cell, or into the whole of a thing; undefined where no entry did. Merges wrote
 * nothing. `values` are looked up together: a history is read once.
 */
export function writersOf(
  { history }: Document,
  cells: readonly { readonly table: string; readonly id: Id; readonly path?: Path; readonly value: Json }[],
): readonly (Entry | undefined)[] {
  const wanted = new Map<string, number[]>();
  for (const [index, { table, id }] of cells.entries()) {
    const key = thingKey(table, id);
    wanted.set(key, [...(wanted.get(key) ?? []), index]);
  }
  const found: (Entry | undefined)[] = cells.map(() => undefined);
  for (const entry of everyEntry(history)) {
    if (isMerge(entry)) continue;
    for (const change of entry.changes)
      for (const index of wanted.get(thingKey(...target(change))) ?? []) {
        const { path, value } = cells[index] as (typeof cells)[number];
        if (wroteValue(change, path, value)) found[index] = entry;
      }
  }
  return found;
}

function wroteValue(change: DoneChange, path: Path | undefined, value: Json): boolean {
  if ('remove' in change) return path === undefined && value === null;
  if (path === undefined) return value !== null;
  const is = valueAt('put' in change ? change.thing : change.set, path) ?? null;
  if (!sameJson(is, value)) return false;
  return 'put' in change || pathsOf(change, change.before).some((each) => narrower(each, path) !== undefined);
}

/** Asks of a thing whether something was decided about it. */
export type WasDecided = (table: string, id: Id) => boolean;

/** The things that a document took out by keeping others in their place, in entries that a copy holding `held` has not seen. */
export function settledAway({ history }: Document, held: ReadonlySet<string>): WasDecided {
  const out = new Set(
    entriesBeyond(history, held).flatMap((entry) => {
      if (isMerge(entry)) return [];
      const kept = entry.changes.filter(isKept);
      if (kept.length === 0) return [];
      return entry.changes.flatMap((change) => ('remove' in change ? [thingKey(...change.remove)] : []));
    }),
  );
  return (table, id) => out.has(thingKey(table, id));
}

/**
 * What takes back the cuts by which a document kept both of two things, where the other copy kept one and took the other out (`away`): nobody has
 * settled the two then, and what the one cut off would be gone with what the other took out. `held` are the other copy's entries. A cut that
 * someone has changed since stays.
 */
export function cutsReopened(
  document: Document,
  held: ReadonlySet<string>,
  away: WasDecided,
): readonly Change[] {
  return [...entriesBeyond(document.history, held)].reverse().flatMap((entry) => {
    const kept = isMerge(entry) ? [] : entry.changes.filter(isKept);
    const changes = entry.changes.filter((change) => target(change)[0] !== QUESTIONS);
    if (kept.length < 2 || changes.some((change) => 'remove' in change)) return [];
    const isOpen = kept.some(({ thing }) => away(String(thing.table), String(thing.thing)));
    return isOpen && hindrance(document, { ...entry, changes }) === undefined ? inverse(changes) : [];
  });
}

/** True of the change that writes down which thing a settlement kept. */
function isKept(change: DoneChange): change is Extract<DoneChange, { readonly put: unknown }> {
  return 'put' in change && change.put[0] === QUESTIONS && isSettled(change.thing);
}

/** The whole things that a document decided to keep, in settlements that a copy has not seen. */
export function keptWhole(tables: Tables, wrote: WasWritten): WasDecided {
  const kept = new Set(
    questionsIn(tables)
      .filter(
        ([id, { field, ours, theirs, settled }]) =>
          field === undefined &&
          settled !== undefined &&
          (settled === 'ours' ? ours : theirs) !== null &&
          wrote(QUESTIONS, id),
      )
      .map(([, { table, thing }]) => thingKey(table, thing)),
  );
  return (table, id) => kept.has(thingKey(table, id));
}

/** Adds what an entry wrote. A merge wrote nothing: what it changes was written by entries of the other copy, or is a question. */
function addEntry(writings: Writings, entry: Entry): void {
  if (!isMerge(entry)) for (const change of entry.changes) add(writings, change);
}

/** `before` holds what stood before a change that does not say it itself. */
function add(writings: Writings, change: Change | DoneChange, before: Tables = {}): void {
  const [table, id] = target(change);
  const key = thingKey(table, id);
  const stood = 'before' in change ? change.before : (own(own(before, table), id) ?? {});
  const writing = { change, before: stood };
  const there = writings.get(key);
  if (there === undefined) writings.set(key, [writing]);
  else there.push(writing);
}

/** True where a writing wrote what is there now: in the cell named, or in any of the thing. */
function stands(
  { change, before }: { readonly change: Change | DoneChange; readonly before: Thing },
  now: Thing | undefined,
  path: Path | undefined,
): boolean {
  if ('remove' in change) return now === undefined;
  if (now === undefined) return false;
  if ('put' in change) return path === undefined || sameJson(valueAt(change.thing, path), valueAt(now, path));
  return pathsOf(change, before).some((written) => {
    const cell = path === undefined ? written : narrower(written, path);
    return cell !== undefined && sameJson(valueAt(change.set, cell), valueAt(now, cell));
  });
}

/** The cell that two paths share: one lies within the other or they are the same; undefined where they part. */
function narrower(one: Path, other: Path): Path | undefined {
  const [short, long] = one.length < other.length ? [one, other] : [other, one];
  return short.every((member, index) => member === long[index]) ? long : undefined;
}

function valueAt(thing: Thing | undefined, [field, ...members]: Path): Json | undefined {
  return members.reduce(
    (value, member) => (isObject(value) ? own(value, member) : undefined),
    own(thing, field),
  );
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
    return differing(was, is).flatMap((member): readonly Path[] => {
      const [old, now] = [namedThings(own(was, member)), namedThings(own(is, member))];
      if (now === undefined) return [[field, member]];
      // Where nothing was there before, what was written is these things and no word on others.
      const those = old !== undefined && old.holder === now.holder ? old.things : {};
      return differing(those, now.things).map((name): Path => [field, member, now.holder, name]);
    });
  });
}

function differing(was: JsonObject, is: JsonObject): readonly string[] {
  return [...new Set([...Object.keys(was), ...Object.keys(is)])].filter(
    (member) => !sameJson(own(was, member), own(is, member)),
  );
}
