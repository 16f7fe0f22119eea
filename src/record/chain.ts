import { isMerge } from './ancestry.ts';
import type { Change, Document, DoneChange, Entry, Tables } from './document.ts';
import { draftOf, makeChange, tablesOf } from './draft.ts';
import { hashHolds } from './hash.ts';

/**
 * What is wrong with a chain, or undefined: the first entry that does not hold, counted from 0, and why. Entries cut off its
 * end leave a chain that holds; that shows in the tables (see outsideChanges). `digest` may be a faster SHA-256 than ours.
 */
export function chainFault(
  history: readonly Entry[],
  digest?: (text: string) => string,
): { readonly index: number; readonly problem: string } | undefined {
  const held = new Set<string>();
  let previous: string | undefined;
  for (const [index, entry] of history.entries()) {
    const problem = linkFault(entry, previous, { held, digest });
    if (problem !== undefined) return { index, problem };
    held.add(entry.hash);
    previous = entry.hash;
  }
  return undefined;
}

/** Hashes that the history holds so far, and what makes a hash. */
interface Checking {
  readonly held: Set<string>;
  readonly digest: ((text: string) => string) | undefined;
}

/** What is wrong with one link after the one before it; entries merged in are added to those that the history holds. */
function linkFault(entry: Entry, previous: string | undefined, checking: Checking): string | undefined {
  if (!hashHolds(entry, checking.digest)) return 'what it says is not what its hash was made of';
  if (entry.follows[0] !== previous) return 'it does not follow the entry above it';
  const parents = (previous === undefined ? 0 : 1) + (isMerge(entry) ? 1 : 0);
  if (entry.follows.length !== parents) return 'it names an entry that is not there';
  if (!isMerge(entry)) return entry.incoming === undefined ? undefined : NO_MERGE;
  return joinFault(entry, checking);
}

const NO_MERGE = 'it is not a merge and holds entries of another copy';

/** What is wrong with what a merge brings in. */
function joinFault(entry: Entry, checking: Checking): string | undefined {
  const { merged, incoming = [] } = entry;
  if (merged !== undefined && entry.incoming !== undefined) return 'it holds the copy it merged in two ways';
  const tip = entry.follows.at(-1) ?? '';
  if (merged !== undefined)
    return tip === merged.at(-1)?.hash
      ? mergedFault(merged, checking)
      : 'it does not name the copy it merged';
  const fault = incomingFault(incoming, tip, checking);
  if (fault !== undefined) return fault;
  return checking.held.has(tip) ? undefined : 'it does not name the copy it merged';
}

/** Entries brought in flat: each behind all that it follows, and every one of them among what the merge's second parent follows. */
function incomingFault(incoming: readonly Entry[], tip: string, checking: Checking): string | undefined {
  const named = new Set([tip, ...incoming.flatMap((inner) => inner.follows)]);
  const found = new Set<string>();
  for (const inner of incoming) {
    const problem = innerFault(inner, checking);
    if (problem !== undefined) return `an entry merged in: ${problem}`;
    if (found.has(inner.hash)) return 'an entry merged in: it is there twice';
    if (!named.has(inner.hash)) return 'an entry merged in: nothing follows it';
    found.add(inner.hash);
    checking.held.add(inner.hash);
  }
  return undefined;
}

function innerFault(inner: Entry, checking: Checking): string | undefined {
  if (!hashHolds(inner, checking.digest)) return 'what it says is not what its hash was made of';
  if (inner.incoming !== undefined) return 'it holds entries of a third copy inside it';
  const fault = inner.merged === undefined ? undefined : joinFault(inner, checking);
  if (fault !== undefined) return fault;
  return inner.follows.every((hash) => checking.held.has(hash))
    ? undefined
    : 'it follows an entry that is not there';
}

/** Entries of a merge of file format 1: a chain that parts from this history, its own merges inside it. */
function mergedFault(merged: readonly Entry[], checking: Checking): string | undefined {
  const { held } = checking;
  let last = merged[0]?.follows[0];
  if (last !== undefined && !held.has(last)) return 'the copy it merged did not part from this history';
  for (const inner of merged) {
    const problem = linkFault(inner, last, checking);
    if (problem !== undefined) return `an entry merged in: ${problem}`;
    held.add(inner.hash);
    last = inner.hash;
  }
  return undefined;
}

/** The tables that a history makes, from nothing. Throws on a history that does not fit itself: verify the chain first. */
export function replay(history: readonly Entry[]): Tables {
  const draft = draftOf({});
  for (const entry of history) {
    for (const change of entry.changes) {
      const made = makeChange(draft, asChange(change));
      if ('problem' in made)
        throw new Error(`history does not fit itself at edit ${entry.edit}: ${made.problem}`);
    }
  }
  return tablesOf(draft);
}

/** A document as it stood after the first `count` entries of its history. */
export function asOf(document: Document, count: number): Document {
  const history = document.history.slice(0, count);
  return { ...document, tables: replay(history), history };
}

/** A done change without what stood before it. */
export function asChange(done: DoneChange): Change {
  if ('put' in done) return { put: done.put, thing: done.thing };
  if ('remove' in done) return { remove: done.remove };
  return {
    patch: done.patch,
    ...(done.set === undefined ? {} : { set: done.set }),
    ...(done.unset === undefined ? {} : { unset: done.unset }),
  };
}
