import type { Document, Entry } from './document.ts';
import { sameJson } from './json.ts';

/** How another copy of a document stands to ours, decided by the chain and never by a clock. */
export type Standing = 'same' | 'newer' | 'older' | 'diverged' | 'unrelated';

/** True of an entry that joins two copies; what it changes was written by entries of the other one. */
export function isMerge(entry: Entry): boolean {
  return entry.follows.length === 2 || entry.merged !== undefined;
}

/** Every entry that a history holds, once each, those merged in included; each comes after all that it follows. */
export function everyEntry(history: readonly Entry[]): readonly Entry[] {
  return entriesBeyond(history, NONE_HELD);
}

const NONE_HELD: ReadonlySet<string> = new Set();

/**
 * What a history holds beyond the entries `held`, as a merge brings it in: oldest first, each once, without what they brought in
 * themselves, which stands in the list too. Merges of file format 1 keep the copies inside them: their hashes are made of those.
 */
export function bareEntriesBeyond(history: readonly Entry[], held: ReadonlySet<string>): readonly Entry[] {
  const found = new Map<string, Entry>();
  for (const entry of history.flatMap((each) => [...(each.incoming ?? []), each])) {
    const { incoming: _, ...bare } = entry;
    if (!held.has(entry.hash)) found.set(entry.hash, bare);
  }
  return [...found.values()];
}

/** Hashes of every entry that a history holds, those merged in included. */
export function heldBy(history: readonly Entry[]): ReadonlySet<string> {
  const held = new Set<string>();
  const add = (entry: Entry): void => {
    if (held.has(entry.hash)) return;
    for (const inner of entry.incoming ?? entry.merged ?? []) add(inner);
    held.add(entry.hash);
  };
  for (const entry of history) add(entry);
  return held;
}

/** How many entries of a history, from its start, are among those held. Who holds an entry holds all that it follows. */
export function countHeld(history: readonly Entry[], held: ReadonlySet<string>): number {
  const first = history.findIndex((entry) => !held.has(entry.hash));
  return first === -1 ? history.length : first;
}

/** What a history holds and a copy with the entries `held` does not, oldest first. Who holds an entry holds all that came in with it. */
export function entriesBeyond(history: readonly Entry[], held: ReadonlySet<string>): readonly Entry[] {
  const found = new Map<string, Entry>();
  const add = (entry: Entry): void => {
    if (held.has(entry.hash) || found.has(entry.hash)) return;
    for (const inner of entry.incoming ?? entry.merged ?? []) add(inner);
    found.set(entry.hash, entry);
  };
  for (const entry of history) add(entry);
  return [...found.values()];
}

/**
 * How their copy stands to ours. Newer: it holds all of ours (as its own or merged in) and more. Two copies that each merged the other
 * the same evening differ by their merges alone: where they came to the same tables they are the same.
 */
export function standingOf(ours: Document, theirs: Document): Standing {
  const [oursHeld, theirsHeld] = [heldBy(ours.history), heldBy(theirs.history)];
  const weLack = entriesBeyond(theirs.history, oursHeld);
  const theyLack = entriesBeyond(ours.history, theirsHeld);
  if (weLack.length === 0 && theyLack.length === 0) return 'same';
  if (theyLack.length === 0) return 'newer';
  if (weLack.length === 0) return 'older';
  if ([...weLack, ...theyLack].every(isMerge) && sameJson(ours.tables, theirs.tables)) return 'same';
  return [...oursHeld].some((hash) => theirsHeld.has(hash)) ? 'diverged' : 'unrelated';
}
