import type { Document, Entry } from './document.ts';

/** How another copy of a document stands to ours, decided by the chain and never by a clock. */
export type Standing = 'same' | 'newer' | 'older' | 'diverged' | 'unrelated';

/** Every entry that a history holds, those merged in included. */
export function everyEntry(history: readonly Entry[]): readonly Entry[] {
  return history.flatMap((entry) => [entry, ...everyEntry(entry.merged ?? [])]);
}

/** Hashes of every entry that a history holds, those merged in included. */
export function heldBy(history: readonly Entry[]): ReadonlySet<string> {
  return new Set(everyEntry(history).map((entry) => entry.hash));
}

/** How many entries of a history, from its start, another one holds: as its own or merged in. */
export function sharedEntries(history: readonly Entry[], other: readonly Entry[]): number {
  return countHeld(history, heldBy(other));
}

/** How many entries of a history, from its start, are among those held. Who holds an entry holds all that it follows. */
export function countHeld(history: readonly Entry[], held: ReadonlySet<string>): number {
  const first = history.findIndex((entry) => !held.has(entry.hash));
  return first === -1 ? history.length : first;
}

/** How their copy stands to ours. Newer: it holds all of ours (as its own or merged in) and more. */
export function standingOf(ours: Document, theirs: Document): Standing {
  const weLack = theirs.history.length - sharedEntries(theirs.history, ours.history);
  const theyLack = ours.history.length - sharedEntries(ours.history, theirs.history);
  if (weLack === 0 && theyLack === 0) return 'same';
  if (theyLack === 0) return 'newer';
  if (weLack === 0) return 'older';
  return meet(ours.history, theirs.history) ? 'diverged' : 'unrelated';
}

function meet(ours: readonly Entry[], theirs: readonly Entry[]): boolean {
  const held = heldBy(theirs);
  return [...heldBy(ours)].some((hash) => held.has(hash));
}
