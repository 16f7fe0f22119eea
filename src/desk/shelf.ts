import type { LoadedDocument } from '../files/load-document.ts';
import { type Document, documentKey } from '../record/document.ts';

/** A document at the desk: as it is, and how much of it is where. */
export interface Held {
  /** As the console shows it. */
  readonly document: Document;
  /** As the journal holds it: what a snapshot may hold. Undefined until its first edit is on the medium. */
  readonly durable: Document | undefined;
  /** The last line of the journal that changed it, and the last that its file holds. */
  readonly lastSequence: number;
  readonly snapshotSequence: number;
}

/** The documents at the desk. `standing` is a new map after every change, so that a view can compare by reference. */
export interface Shelf {
  readonly get: (key: string) => Held | undefined;
  readonly keys: () => readonly string[];
  /** Documents that stand: one whose making was undone has a history and nothing on it. */
  readonly standing: () => ReadonlyMap<string, Document>;
  readonly update: (key: string, held: Held) => void;
}

/** A shelf with the documents as read. `lastSequence` is the journal's: a file that lacks nothing holds all up to it. */
export function shelfOf(loaded: ReadonlyMap<string, LoadedDocument>, lastSequence: number): Shelf {
  const all = new Map<string, Held>();
  for (const [key, { document, firstMissing }] of loaded) {
    const snapshotSequence = firstMissing === undefined ? lastSequence : firstMissing - 1;
    all.set(key, { document, durable: document, lastSequence, snapshotSequence });
  }
  let standing: ReadonlyMap<string, Document> | undefined;
  return {
    get: (key) => all.get(key),
    keys: () => [...all.keys()],
    standing: () => {
      standing ??= standingOf(all.values());
      return standing;
    },
    update: (key, held) => {
      if (held.document !== all.get(key)?.document) standing = undefined;
      all.set(key, held);
    },
  };
}

function standingOf(held: Iterable<Held>): ReadonlyMap<string, Document> {
  const documents = [...held].map(({ document }) => document);
  return new Map(
    documents
      .filter((document) => Object.keys(document.tables).length > 0)
      .map((document) => [documentKey(document), document]),
  );
}

/** True where a document's file does not hold all that the journal holds of it. */
export function needsSnapshot(held: Held): boolean {
  return held.durable !== undefined && held.lastSequence > held.snapshotSequence;
}
