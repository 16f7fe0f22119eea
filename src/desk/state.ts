import { join } from 'node:path';
import type { Disk, FileFacts } from '../files/disk.ts';
import { generationFile, listGenerations } from '../files/journal.ts';
import type { LetGo } from '../files/journal-line.ts';
import type { Lock } from '../files/lock.ts';
import type { Machine } from '../files/machine.ts';
import { HAND_WRITTEN } from '../files/project-folder.ts';
import type { JsonText } from '../files/read-json.ts';
import { highestCounter } from '../files/replica.ts';
import type { Finding } from '../finding/finding.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { Document, Edit, Id } from '../record/document.ts';
import type { Health } from './health.ts';
import type { Shelf } from './shelf.ts';
import type { Sitting } from './undo.ts';
import type { Writer } from './writer.ts';

/** What stays the same for as long as a desk is open. */
export interface SessionNeeds {
  readonly disk: Disk;
  readonly after: (ms: number, run: () => void) => () => void;
  readonly now: () => Stamp;
  readonly person: string;
  readonly random: (bytes: number) => Uint8Array;
  readonly machine: Machine;
  readonly idleMs: number;
  /** Where edits are kept that the project's disk does not take when it is closed; nowhere if none is given. */
  readonly unsavedFolder?: string;
}

/** Where a desk writes: exchanged whole when it moves to another folder. */
export interface Base {
  readonly folder: string;
  readonly lock: Lock;
  readonly writer: Writer;
  readonly replica: string;
  /** Facts of documents' files as last read or written by us, by key. */
  readonly facts: Map<string, FileFacts>;
  /** Generations that hold damage. */
  readonly spoiled: ReadonlySet<number>;
}

/** The one mutable record of an open desk; every function of this room that changes anything changes it through here. */
export interface State {
  readonly needs: SessionNeeds;
  readonly shelf: Shelf;
  readonly closed: Map<string, string>;
  /** Documents that were let go, oldest first. */
  readonly letGo: LetGo[];
  /** Ends of histories that files lack which were rolled back, by key. */
  readonly lacking: Map<string, string>;
  readonly listeners: Set<() => void>;
  readonly byHand: { project: JsonText | undefined; logging: JsonText | undefined };
  base: Base;
  counter: number;
  sitting: Sitting;
  findings: readonly Finding[];
  savedAt: Stamp | undefined;
  /** Edits on the medium since files were last written. */
  sinceSnapshot: number;
  /** A rod was recorded since then: the rig adds the next one, so no one waits for a key. */
  rodDone: boolean;
  /** When files were last written; undefined before the first time. */
  filedAt: Stamp | undefined;
  cancelIdle: (() => void) | undefined;
  /** Keys of documents edited since their files were looked at. */
  readonly toLookAt: Set<string>;
  looking: boolean;
  /** Facts of files that another program wrote and that can't be read, by key: each is said once. */
  readonly refusedFiles: Map<string, FileFacts>;
  ended: boolean;
}

/** Tells every listener that something changed. */
export function tell(state: State): void {
  for (const listener of state.listeners) listener();
}

/** A permanent id that this replica never gave before. */
export function newId(state: State): Id {
  state.counter += 1;
  return `${state.base.replica}-${state.counter}`;
}

/** Goes past the ids in what came in after the opening, so that none of them is given again. */
export function goPast(state: State, documents: readonly Document[], edits: readonly Edit[]): void {
  state.counter = Math.max(state.counter, highestCounter(state.base.replica, documents, edits));
}

/** How safe the work is. */
export function healthOf(state: State): Health {
  const { pending, busy, failure, displaced } = state.base.writer.state();
  const waiting = pending.flatMap(({ line }) => ('edit' in line ? [line.edit] : []));
  const reason = displaced ?? failure;
  return {
    state: stateOf(displaced !== undefined || state.ended, failure !== undefined, busy && pending.length > 0),
    unsafeEdits: pending.length,
    waiting,
    ...(reason === undefined ? {} : { reason }),
    ...(state.savedAt === undefined ? {} : { savedAt: state.savedAt }),
  };
}

function stateOf(readOnly: boolean, failing: boolean, saving: boolean): Health['state'] {
  if (readOnly) return 'read only';
  if (failing) return 'unsafe';
  return saving ? 'saving' : 'safe';
}

/**
 * Who has taken the project over, in words; undefined where it is still ours. A lock that is merely gone (a folder put
 * back, a stick plugged in again) is made again, unless another console has written a later generation meanwhile.
 */
export async function displacedFrom(
  disk: Disk,
  folder: string,
  lock: Lock,
  generation: number,
): Promise<string | undefined> {
  const holder = await lock.displacedBy();
  if (holder === undefined) return undefined;
  if (holder !== 'no one') return `${holder.owner} on ${holder.host} has taken this project over`;
  const newest = (await listGenerations(disk, folder)).at(-1) ?? 0;
  if (newest > generation) return `another console has written ${generationFile(newest)} meanwhile`;
  // Where the whole folder is gone this rejects, and is tried again later.
  await disk.facts(join(folder, HAND_WRITTEN.project));
  await lock.renew();
  return undefined;
}
