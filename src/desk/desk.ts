import type { Disk } from '../files/disk.ts';
import { type Machine, thisMachine } from '../files/machine.ts';
import { realDisk } from '../files/real-disk.ts';
import { ok, type Result } from '../finding/finding.ts';
import type { Migration } from '../formats/upgrade.ts';
import { type Stamp, stamp } from '../quantity/stamp.ts';
import type { Desk } from './contract.ts';
import { newToken, openToRead, openToWrite } from './opening.ts';
import { readingSession } from './reading.ts';
import { startSession } from './session.ts';
import { unsavedWaiting } from './unsaved.ts';

export type { Desk, Moved, Submitted } from './contract.ts';

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
  /** A folder of the person's own, on another disk where there is one, for edits that the project's disk does not take on closing. */
  readonly unsavedFolder?: string;
}

/** A minute: writing the file of a long hole holds up the keys for a moment, and the journal has every row meanwhile. */
const IDLE_MS = 60_000;

/**
 * Runs something later. The timer keeps the program alive: someone may be waiting for what it does, and a program that ends with a promise
 * open says nothing and has no exit code that means anything. Closing the desk calls off what is left.
 */
function afterOnTimer(ms: number, run: () => void): () => void {
  const timer = setTimeout(run, ms);
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
    if (!read.ok) return read;
    const waiting = await unsavedWaiting(disk, options.unsavedFolder, options.folder);
    return ok(readingSession(options.folder, read.value, common, waiting));
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
  const { unsavedFolder } = options;
  return ok(
    await startSession(options.folder, opened.value, {
      ...common,
      machine,
      idleMs: options.idleMs ?? IDLE_MS,
      ...(unsavedFolder === undefined ? {} : { unsavedFolder }),
    }),
  );
}
