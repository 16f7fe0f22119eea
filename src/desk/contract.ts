import type { JsonText } from '../files/read-json.ts';
import type { Finding, Result } from '../finding/finding.ts';
import type { KnownCopy, WrittenText } from '../handover/bundle/known-copies.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { Change, Document, DocumentName, Edit, Id } from '../record/document.ts';
import type { Health, Saved } from './health.ts';
import type { Outcome } from './take-in.ts';

/** What is to be done: an edit without what the desk gives it (id, time, person). */
export type EditRequest = Omit<Edit, 'edit' | 'at' | 'by'>;

/** An edit taken: it is in memory at once; `durable` tells when it is on the medium (or that the first try failed). */
export type Submitted =
  | { readonly ok: true; readonly edit: Edit; readonly durable: Promise<Saved> }
  | { readonly ok: false; readonly problem: string };

/** Another copy of a document taken in, and what came of it. */
export type Received =
  | {
      readonly ok: true;
      readonly outcome: Outcome;
      readonly document: Document;
      /** How many cells both copies changed differently; each is an open question in the document. */
      readonly questions: number;
      readonly durable: Promise<Saved>;
    }
  | { readonly ok: false; readonly problem: string };

/** What came of closing, or of writing something. */
export type Done = { readonly ok: true } | { readonly ok: false; readonly problem: string };

/** What came of moving to another folder: files that could not be taken along, each with why. */
export type Moved =
  | { readonly ok: true; readonly left: readonly Finding[] }
  | { readonly ok: false; readonly problem: string };

/** A document whose file is gone: what the journal still holds of it, oldest first, in words. */
export interface MissingDocument {
  readonly name: DocumentName;
  readonly file: string;
  readonly held: readonly string[];
  /** Set where its file is there, and older than what was saved in it. */
  readonly isOlder?: true;
}

/** What came of letting a document go: the file in which everything that the journal held of it is kept; none where only what an older copy lacks was let go. */
export type LetGoDone =
  | { readonly ok: true; readonly kept?: string }
  | { readonly ok: false; readonly problem: string };

/** A project at the desk: the only way to its files. */
export interface Desk {
  readonly folder: () => string;
  readonly readOnly: boolean;
  readonly person: string;
  /** This copy of the project on this computer: its ids begin with it. */
  readonly replica: () => string;
  /** Documents that stand, by key (`hole/ZQRC004`). A new map after every change. */
  readonly documents: () => ReadonlyMap<string, Document>;
  readonly get: (name: DocumentName) => Document | undefined;
  /** What was found on opening and since, for the recovery screen. */
  readonly findings: () => readonly Finding[];
  /** Documents that can't be written, by key, with why in words. */
  readonly closed: ReadonlyMap<string, string>;
  /** The files written by hand, as found. */
  readonly project: () => JsonText | undefined;
  readonly logging: () => JsonText | undefined;
  /** A permanent id that was never given before. */
  readonly newId: () => Id;
  readonly now: () => Stamp;
  readonly health: () => Health;
  /**
   * Applies an edit at once, to all its documents or none, and sends it to the journal. A part whose document is not
   * there makes it. Refused in words where it does not fit or could not be read back.
   */
  readonly submit: (request: EditRequest) => Submitted;
  /**
   * Takes back this sitting's latest edit, of whatever document; refused with the reason where what it touched has changed. What was
   * edited outside is taken back only while its document is in hand.
   */
  readonly undo: (inHand?: DocumentName) => Submitted;
  /** The edit that undo would take back now; undefined where there is none, or it can't be. */
  readonly undoable: (inHand?: DocumentName) => Edit | undefined;
  /** Does the latest undone edit again, of whatever document. */
  readonly redo: () => Submitted;
  /** Takes in another copy of a document: newer taken, older ignored, diverged merged, unrelated refused. */
  readonly receive: (copy: Document) => Received;
  /** Documents that the journal knows and whose files are gone, with what the journal still holds of them. */
  readonly missing: () => readonly MissingDocument[];
  /** Gives up a document whose file is gone, for good and with the reason: recorded in the journal, what it held is kept aside. */
  readonly letGo: (name: DocumentName, why: string) => Promise<LetGoDone>;
  /**
   * Makes a document whose file is gone again from what the journal holds of it. `making` are the changes that make such a document
   * where the journal does not hold them. Refused where the journal holds nothing.
   */
  readonly restore: (name: DocumentName, making: readonly Change[]) => Submitted;
  /** Replaces project.json or logging.json durably, the former text kept; refused where the file has changed since it was read. */
  readonly writeByHand: (file: 'project' | 'logging', text: string) => Promise<Result<JsonText>>;
  /** Writes a file that is none of ours to read back (a report, a pack) into a folder of the project, durably. */
  readonly writeOut: (file: string, bytes: Uint8Array) => Promise<Done>;
  /** What the project's other copies said of themselves in bundles that came, the one heard of last at the end. */
  readonly knownCopies: () => Promise<readonly KnownCopy[]>;
  /** Keeps what a bundle said of the copy that it came from. */
  readonly rememberCopy: (heard: KnownCopy) => Promise<Done>;
  /** The files that people write: project.json, logging.json and what that starts from beside it. */
  readonly writtenTexts: () => Promise<readonly WrittenText[]>;
  /** Writes the files of documents that the journal is ahead of, now instead of at the next pause. */
  readonly snapshot: () => Promise<Done>;
  /** Holds every file against what was last read or written here: one that another program changed meanwhile is taken in and said. */
  readonly look: () => Promise<void>;
  /** Does that by itself soon after anything changes in the folders, where the disk can tell; gives the way to end it. */
  readonly watch: () => () => void;
  /** Tries again at once to save what is not safe. */
  readonly retry: () => Promise<Health>;
  /**
   * Writes everything to another folder (empty or not there) and goes on working there: documents as they are, files that can't
   * be read as they are. What can't be taken along is in `left` and among the findings.
   */
  readonly moveTo: (folder: string) => Promise<Moved>;
  /** Calls the listener after every change of documents, findings or health; gives the way to stop that. */
  readonly subscribe: (listener: () => void) => () => void;
  /**
   * Saves, writes snapshots, gives the lock back. Refused where rows are not safe, unless they are to be abandoned; `keep` then keeps them
   * where the next opening on this computer puts them in, and says so as the problem.
   */
  readonly close: (options?: { readonly abandon?: boolean; readonly keep?: boolean }) => Promise<Done>;
}
