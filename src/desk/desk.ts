import type { Disk } from '../files/disk.ts';
import { type Machine, thisMachine } from '../files/machine.ts';
import type { JsonText } from '../files/read-json.ts';
import { realDisk } from '../files/real-disk.ts';
import { type Finding, ok, type Result } from '../finding/finding.ts';
import type { Migration } from '../formats/upgrade.ts';
import { type Stamp, stamp } from '../quantity/stamp.ts';
import type { Document, DocumentName, Edit, Id } from '../record/document.ts';
import type { Health, Saved } from './health.ts';
import { newToken, openToRead, openToWrite } from './opening.ts';
import { readingSession } from './reading.ts';
import { startSession } from './session.ts';
import type { Outcome } from './take-in.ts';

/** What is to be done: an edit without what the desk gives it (id, time, person). */
export type EditRequest = Omit<Edit, 'edit' | 'at' | 'by'>;

/** An edit taken: it stands in memory at once; `durable` tells when it is on the medium (or that the first try failed). */
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

/** What came of closing, or of moving to another folder. */
export type Done = { readonly ok: true } | { readonly ok: false; readonly problem: string };

/** A project at the desk: the only way to its files. */
export interface Desk {
  readonly folder: () => string;
  readonly readOnly: boolean;
  readonly person: string;
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
  /** Takes back this sitting's latest edit of a document; refused with the reason where what it touched has changed. */
  readonly undo: (name: DocumentName) => Submitted;
  /** Does the latest undone edit of a document again. */
  readonly redo: (name: DocumentName) => Submitted;
  /** Takes in another copy of a document: newer taken, older ignored, diverged merged, unrelated refused. */
  readonly receive: (copy: Document) => Received;
  /** Replaces project.json or logging.json durably, the former text kept; refused where the file has changed since it was read. */
  readonly writeByHand: (file: 'project' | 'logging', text: string) => Promise<Result<JsonText>>;
  /** Writes a file that is none of ours to read back (a report, a pack) into a folder of the project, durably. */
  readonly writeOut: (file: string, bytes: Uint8Array) => Promise<Done>;
  /** Writes the files of documents that the journal is ahead of, now instead of at the next pause. */
  readonly snapshot: () => Promise<Done>;
  /** Tries again at once to save what is not safe. */
  readonly retry: () => Promise<Health>;
  /** Writes everything to another folder (empty or not there) and goes on working there. */
  readonly moveTo: (folder: string) => Promise<Done>;
  /** Calls the listener after every change of documents, findings or health; gives the way to stop that. */
  readonly subscribe: (listener: () => void) => () => void;
  /** Saves, writes snapshots, gives the lock back. Refused where rows are not safe, unless they are to be abandoned. */
  readonly close: (options?: { readonly abandon?: boolean }) => Promise<Done>;
}

/** What a desk is opened with. Time and randomness come in, so that a whole sitting can be repeated to the byte. */
export interface DeskOptions {
  readonly folder: string;
  readonly person: string;
  readonly clock: { readonly nowMs: () => number; readonly offsetMin: () => number };
  readonly random: (bytes: number) => Uint8Array;
  readonly disk?: Disk;
  readonly machine?: Machine;
  readonly readOnly?: boolean;
  /** Set by a person who knows that whoever holds the lock is gone. */
  readonly takeOver?: boolean;
  readonly migrations?: readonly Migration[];
  /** Runs something later; gives the way to call it off. */
  readonly after?: (ms: number, run: () => void) => () => void;
  /** How long after the last edit the files are written, in milliseconds. */
  readonly idleMs?: number;
}

const IDLE_MS = 5_000;

/** Runs something later without keeping the program alive for it. */
function afterOnTimer(ms: number, run: () => void): () => void {
  const timer = setTimeout(run, ms);
  timer.unref();
  return () => clearTimeout(timer);
}

/**
 * Opens a project. Refused, with nothing changed, where there is none, where it can't be written, and where another
 * console holds it. What is wrong with single files keeps the rest from nothing: see `findings` and `closed`.
 */
export async function openDesk(options: DeskOptions): Promise<Result<Desk>> {
  const disk = options.disk ?? realDisk;
  const after = options.after ?? afterOnTimer;
  const now = (): Stamp => stamp(options.clock.nowMs(), options.clock.offsetMin());
  const common = { disk, after, now, person: options.person, random: options.random };
  if (options.readOnly === true) {
    const read = await openToRead(disk, options.folder, options.migrations);
    return read.ok ? ok(readingSession(options.folder, read.value, common)) : read;
  }
  const machine = options.machine ?? thisMachine();
  const opened = await openToWrite({
    disk,
    folder: options.folder,
    random: options.random,
    machine,
    ...(options.migrations === undefined ? {} : { migrations: options.migrations }),
    lock: {
      token: newToken(options.random),
      owner: options.person,
      since: now(),
      takeOver: options.takeOver === true,
      pause: (ms) => new Promise((done) => after(ms, done)),
    },
  });
  if (!opened.ok) return opened;
  return ok(
    startSession(options.folder, opened.value, { ...common, machine, idleMs: options.idleMs ?? IDLE_MS }),
  );
}
