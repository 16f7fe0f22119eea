import type { JsonObject } from './json.ts';

/**
 * The identity of a thing or an edit: the replica that made it and that replica's counter (`k3f9-12`). Permanent: never
 * reused, never changed by a rename, a merge or a move of the file.
 */
export type Id = string;

/** One thing of a document; its identity is its key in the table. */
export type Thing = JsonObject;

/** One table: things by id, in the order in which they were made (one taken out and put back comes last). */
export type Table = { readonly [id: Id]: Thing };

/** The tables of a document by name. A table that holds nothing may be missing. */
export type Tables = { readonly [table: string]: Table };

/** Names a document in its project: what kind of file it is and its permanent id (`hole`, `ZQRC004`). */
export interface DocumentName {
  readonly kind: string;
  readonly id: string;
}

/** A document: what is there now (tables) and how it came to stand (history). Knows no geology. */
export interface Document extends DocumentName {
  readonly tables: Tables;
  readonly history: readonly Entry[];
}

/** A primitive change. The whole vocabulary: an edit is a list of these, with every result already resolved. */
export type Change =
  /** A thing that was not there. */
  | { readonly put: readonly [table: string, id: Id]; readonly thing: Thing }
  /** Fields of a thing that is there: `set` gives them values, `unset` takes them out. */
  | {
      readonly patch: readonly [table: string, id: Id];
      readonly set?: Thing;
      readonly unset?: readonly string[];
    }
  /** A thing that is there, taken out. Its history stays. */
  | { readonly remove: readonly [table: string, id: Id] };

/** A change with what stood before it, as history keeps it: `before` holds only the fields that it changes. */
export type DoneChange =
  | { readonly put: readonly [table: string, id: Id]; readonly thing: Thing }
  | {
      readonly patch: readonly [table: string, id: Id];
      readonly set?: Thing;
      readonly unset?: readonly string[];
      readonly before: Thing;
    }
  | { readonly remove: readonly [table: string, id: Id]; readonly before: Thing };

/** Who, when, what, in words: the part of an edit that every entry of it repeats. */
export interface Deed {
  /** Identity of the edit; one edit may leave an entry in several documents. */
  readonly edit: Id;
  /** When, as a stamp (instant and offset). Order is the chain's, never the clock's: a clock that jumps back breaks nothing. */
  readonly at: string;
  readonly by: string;
  /** What was done, in plain words, for the person who reads the history. */
  readonly what: string;
  /** The edit that this one takes back (undo) or does again (redo). */
  readonly undoes?: Id;
  readonly redoes?: Id;
}

/** One link of a document's history: the deed, its changes with what stood before, and the hash chain. */
export interface Entry extends Deed {
  readonly changes: readonly DoneChange[];
  /** Hashes of the entries that this one follows: none for the first, two for a merge, else one. */
  readonly follows: readonly string[];
  /** SHA-256, hex, of the canonical JSON of everything else in the entry but `incoming`, which `follows` vouches for. */
  readonly hash: string;
  /**
   * On a merge only: the other copy's entries that this history did not hold yet, oldest first, each once and with no `incoming` of
   * its own. The last is the second of `follows`.
   */
  readonly incoming?: readonly Entry[];
  /** On a merge of file format 1, in place of `incoming`: the other copy's entries with their own merges inside them, and hashed. */
  readonly merged?: readonly Entry[];
  /** True where the entry records a change found in the file and made by no edit of ours. */
  readonly outside?: true;
}

/** An edit: a transaction of changes over one or more documents, atomic, with its deed. */
export interface Edit extends Deed {
  readonly parts: readonly { readonly document: DocumentName; readonly changes: readonly Change[] }[];
}

/** A document with nothing in it. */
export function emptyDocument(name: DocumentName): Document {
  return { kind: name.kind, id: name.id, tables: {}, history: [] };
}

/** One text for a document's name, for maps and messages: `hole/ZQRC004`. */
export function documentKey(name: DocumentName): string {
  return `${name.kind}/${name.id}`;
}
