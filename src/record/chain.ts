import { applyChanges } from './apply.ts';
import type { Change, Document, DoneChange, Entry, Tables } from './document.ts';
import { hashHolds } from './hash.ts';

/** What is wrong with a chain, or undefined: the first entry that does not hold, counted from 0, and why. */
export function chainFault(
  history: readonly Entry[],
): { readonly index: number; readonly problem: string } | undefined {
  let previous: Entry | undefined;
  for (const [index, entry] of history.entries()) {
    if (!hashHolds(entry)) return { index, problem: 'what it says is not what its hash was made of' };
    const first = entry.follows[0];
    if (first !== previous?.hash) return { index, problem: 'it does not follow the entry above it' };
    const inner = entry.merged === undefined ? undefined : mergedFault(entry);
    if (inner !== undefined) return { index, problem: inner };
    previous = entry;
  }
  return undefined;
}

function mergedFault(entry: Entry): string | undefined {
  const merged = entry.merged ?? [];
  if (merged.some((inner) => !hashHolds(inner))) return 'an entry merged in does not hold';
  if (entry.follows[1] !== merged.at(-1)?.hash) return 'it does not name the copy it merged';
  return undefined;
}

/** The tables that a history makes, from nothing. Throws on a history that does not fit itself: verify the chain first. */
export function replay(history: readonly Entry[]): Tables {
  let tables: Tables = {};
  for (const entry of history) {
    const applied = applyChanges(tables, entry.changes.map(asChange));
    if (!applied.ok) throw new Error(`history does not fit itself at edit ${entry.edit}: ${applied.problem}`);
    tables = applied.tables;
  }
  return tables;
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
