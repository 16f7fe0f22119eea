import { countHeld, everyEntry, isMerge } from './ancestry.ts';
import { chainFault, replay } from './chain.ts';
import type { Document, DocumentName, Entry } from './document.ts';

/** An entry of an increment: of what a merge brings in, an entry that the receiver holds already is named by its hash alone. */
export type IncrementEntry = Omit<Entry, 'incoming'> & { readonly incoming?: readonly (Entry | string)[] };

/** What a document holds beyond the history that ends with one of its entries. */
export interface Increment extends DocumentName {
  /** Hash of the last entry of its own history that the receiver holds. */
  readonly onto: string;
  readonly entries: readonly IncrementEntry[];
}

/** The entry of a history that has a hash, and all that it follows, by hash; undefined where the history does not hold it. */
export function entriesUpTo(history: readonly Entry[], hash: string): ReadonlyMap<string, Entry> | undefined {
  return reachedFrom(hash, new Map(everyEntry(history).map((entry) => [entry.hash, entry])));
}

/**
 * What a document holds beyond `since`, the last entry of a copy of it. Undefined where it does not hold that entry itself, where no entry of
 * its own history is among those that the copy has, and where a merge of file format 1 keeps whole copies inside its hash.
 */
export function incrementSince(document: Document, since: string): Increment | undefined {
  const { kind, id, history } = document;
  if (history.some((entry) => entry.merged !== undefined)) return undefined;
  const held = entriesUpTo(history, since);
  if (held === undefined) return undefined;
  const shared = countHeld(history, new Set(held.keys()));
  const onto = history[shared - 1]?.hash;
  if (onto === undefined) return undefined;
  const entries = history.slice(shared).map(({ incoming, ...entry }): IncrementEntry => {
    if (incoming === undefined) return entry;
    return { ...entry, incoming: incoming.map((inner) => (held.has(inner.hash) ? inner.hash : inner)) };
  });
  return { kind, id, onto, entries };
}

/** The copy that an increment was made of, or the first entry that is missing for it among those held. */
export type Completed =
  | { readonly ok: true; readonly document: Document }
  | { readonly ok: false; readonly problem: string };

/**
 * Makes the whole copy again, from an increment and a history that holds what it goes on from. Its tables are those that its history
 * makes. `digest` may be a faster SHA-256 than ours.
 */
export function completed(
  { kind, id, onto, entries }: Increment,
  ours: readonly Entry[],
  digest?: (text: string) => string,
): Completed {
  const known = new Map(everyEntry(ours).map(({ incoming: _, ...bare }) => [bare.hash, bare as Entry]));
  const start = historyUpTo(onto, known);
  const missing = (hash: string): Completed => ({
    ok: false,
    problem: `the edit ${hash.slice(0, 8)} is not here`,
  });
  if (typeof start === 'string') return missing(start);
  const history = [...start];
  for (const { incoming, ...entry } of entries) {
    if (incoming === undefined) history.push(entry);
    else {
      const inner = incoming.map((each) => (typeof each === 'string' ? (known.get(each) ?? each) : each));
      const absent = inner.find((each) => typeof each === 'string');
      if (absent !== undefined) return missing(absent);
      history.push({ ...entry, incoming: inner as readonly Entry[] });
    }
  }
  const fault = chainFault(history, digest);
  if (fault !== undefined)
    return { ok: false, problem: `entry ${fault.index + 1} of its history: ${fault.problem}` };
  try {
    return { ok: true, document: { kind, id, tables: replay(history), history } };
  } catch (error) {
    return { ok: false, problem: error instanceof Error ? error.message : String(error) };
  }
}

/** A document's own history that ends with an entry: each one's first parent is the one before it. Else the hash that is not known. */
function historyUpTo(last: string, known: ReadonlyMap<string, Entry>): readonly Entry[] | string {
  const own: Entry[] = [];
  for (let hash: string | undefined = last; hash !== undefined; ) {
    const entry = known.get(hash);
    if (entry === undefined || entry.merged !== undefined) return hash;
    own.push(entry);
    hash = entry.follows[0];
  }
  const held = new Set<string>();
  const history: Entry[] = [];
  for (const entry of own.reverse()) {
    const incoming = isMerge(entry) ? broughtIn(entry, known, held) : undefined;
    if (typeof incoming === 'string') return incoming;
    for (const inner of incoming ?? []) held.add(inner.hash);
    held.add(entry.hash);
    history.push(incoming === undefined ? entry : { ...entry, incoming });
  }
  return history;
}

/** What a merge brought in: all that its second parent follows and the history before it does not hold, each behind what it follows. */
function broughtIn(
  { follows }: Entry,
  known: ReadonlyMap<string, Entry>,
  held: ReadonlySet<string>,
): readonly Entry[] | string {
  const found = reachedFrom(follows[1] ?? '', known, held);
  return found === undefined ? (follows[1] ?? '') : [...found.values()];
}

/** An entry and all that it follows short of those held, each behind what it follows; undefined where one of them is not known. */
function reachedFrom(
  hash: string,
  known: ReadonlyMap<string, Entry>,
  held: ReadonlySet<string> = new Set(),
): ReadonlyMap<string, Entry> | undefined {
  const found = new Map<string, Entry>();
  // A history is thousands of entries deep: a stack of our own, each hash on it until all that it follows is found.
  const waiting = held.has(hash) ? [] : [hash];
  while (waiting.length > 0) {
    const next = waiting.at(-1) as string;
    const entry = known.get(next);
    if (entry === undefined) return undefined;
    const before = entry.follows.filter((each) => !found.has(each) && !held.has(each));
    if (before.length === 0) {
      waiting.pop();
      found.set(next, entry);
    } else waiting.push(...before);
  }
  return found;
}
