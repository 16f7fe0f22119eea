import { basename, join, resolve } from 'node:path';
import { type Disk, isMissing, whyRefused } from '../files/disk.ts';
import { DOCUMENT_KINDS } from '../files/document-file.ts';
import { noProject } from '../files/findings.ts';
import { dropOldPast, JOURNAL_FOLDER } from '../files/journal.ts';
import { KEPT_FOLDER, keepCopy } from '../files/keep-copy.ts';
import { keepAsRead } from '../files/last-good.ts';
import { type Lock, type LockRequest, takeLock } from '../files/lock.ts';
import type { Machine } from '../files/machine.ts';
import { HAND_WRITTEN, type ProjectFolder, readProjectFolder } from '../files/project-folder.ts';
import { FileRefused, folderOutside } from '../files/read-file.ts';
import { highestCounter, takeReplica } from '../files/replica.ts';
import { ensureFolder } from '../files/write-durably.ts';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { MIGRATIONS, type Migration } from '../formats/upgrade.ts';

/** A project opened for writing: locked, read, its odds and ends kept aside. */
export interface Opened {
  readonly read: ProjectFolder;
  readonly lock: Lock;
  readonly replica: string;
  /** The last counter that this replica has used. */
  readonly counter: number;
}

/** What opening a folder needs. */
export interface OpeningNeeds {
  readonly disk: Disk;
  readonly folder: string;
  readonly random: (bytes: number) => Uint8Array;
  readonly machine: Machine;
  readonly lock: Omit<LockRequest, 'machine'>;
  readonly migrations?: readonly Migration[];
}

/** A short token of random bytes, for temporary names and locks. */
export function newToken(random: (bytes: number) => Uint8Array): string {
  return Array.from(random(8), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Folders of a project that the program writes in. One that is a link out of the project would take rows out of it. */
const WRITTEN_IN = [
  JOURNAL_FOLDER,
  KEPT_FOLDER,
  ...Object.values(DOCUMENT_KINDS).map((kind) => kind.folder),
  'outbox',
  'inbox',
];

/**
 * Refused where the folder is not there or holds no project.json (nothing is made in a folder that is not a project), and where a
 * folder in it is a link out of it.
 */
export async function requireProject(disk: Disk, folder: string): Promise<Result<void>> {
  try {
    await disk.facts(join(folder, HAND_WRITTEN.project));
    const outside = await folderOutside(disk, folder, WRITTEN_IN);
    return outside === undefined ? ok(undefined) : refused(outside);
  } catch (error) {
    const gone = isMissing(error);
    return refused(
      cannotOpen(
        folder,
        gone ? `no ${HAND_WRITTEN.project} in it` : whyRefused(error),
        gone ? 'Go to the project folder, or start one with: offsider new <folder>.' : 'Nothing was changed.',
      ),
    );
  }
}

const ELSEWHERE =
  'Free space or give this user the right to write; or copy the folder to another disk and log on there. To look only: offsider --read-only. Nothing was changed.';

/** By its name alone: where it lies on this computer is known to whoever typed it. */
function cannotOpen(folder: string, problem: string, remedy: string): Finding {
  return noProject.at({ file: `folder ${basename(resolve(folder))}` }, { problem, remedy });
}

/** Reads a project without touching it. */
export async function openToRead(
  disk: Disk,
  folder: string,
  migrations: readonly Migration[] = MIGRATIONS,
): Promise<Result<ProjectFolder>> {
  const there = await requireProject(disk, folder);
  if (!there.ok) return there;
  try {
    return ok(await readProjectFolder(disk, folder, migrations));
  } catch (error) {
    if (error instanceof FileRefused) return refused(...error.findings);
    return refused(cannotOpen(folder, `it can't be read: ${whyRefused(error)}`, 'Nothing was changed.'));
  }
}

/**
 * Opens a project for writing: takes the lock, reads everything, keeps torn tails and originals aside, finds this
 * copy's replica id. Whatever fails, the lock is given back and nothing of the project is changed.
 */
export async function openToWrite(needs: OpeningNeeds): Promise<Result<Opened>> {
  const { disk, folder } = needs;
  const there = await requireProject(disk, folder);
  if (!there.ok) return there;
  try {
    // The lock's folder alone: whatever is in the way of the lock, nothing else has been made.
    await ensureFolder(disk, join(folder, JOURNAL_FOLDER));
  } catch (error) {
    return refused(cannotOpen(folder, `it cannot be written: ${whyRefused(error)}`, ELSEWHERE));
  }
  const lock = await takeLock(disk, folder, { ...needs.lock, machine: needs.machine });
  if (!lock.ok) return lock;
  try {
    return ok(await readUnderLock(needs, lock.value));
  } catch (error) {
    await lock.value.release().catch(() => {});
    if (error instanceof FileRefused) return refused(...error.findings);
    return refused(cannotOpen(folder, `it cannot be opened for writing: ${whyRefused(error)}`, ELSEWHERE));
  }
}

/** Makes the folders that a project keeps its documents and its journal in. */
export async function makeRooms(disk: Disk, folder: string): Promise<void> {
  const rooms = Object.values(DOCUMENT_KINDS).map((kind) => kind.folder);
  for (const room of [JOURNAL_FOLDER, ...rooms]) await ensureFolder(disk, join(folder, room));
}

async function readUnderLock(needs: OpeningNeeds, lock: Lock): Promise<Opened> {
  const { disk, folder, random, machine } = needs;
  const read = await readProjectFolder(disk, folder, needs.migrations ?? MIGRATIONS);
  await makeRooms(disk, folder);
  for (const copy of read.keep) await keepCopy(disk, folder, copy);
  for (const json of [read.project, read.logging])
    if (json !== undefined) await keepAsRead(disk, folder, json.file, new TextEncoder().encode(json.text));
  for (const leftover of read.leftovers) await disk.unlink(join(folder, leftover));
  await dropOldPast(disk, folder);
  const lacks = read.closed.size > 0 || read.lacking.size > 0;
  const replica = await takeReplica(disk, folder, machine.host, random, newToken(random), lacks);
  const documents = [...read.documents.values()].flatMap(({ document, copy }) =>
    copy === undefined ? [document] : [document, copy],
  );
  const edits = read.lines.flatMap((line) => ('edit' in line ? [line.edit] : []));
  return { read, lock, replica, counter: highestCounter(replica, documents, edits) };
}
