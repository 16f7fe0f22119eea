import { lstatSync, watch, writeSync } from 'node:fs';
import { type FileHandle, mkdir, open, readdir, realpath, rename, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { asReading, type Disk, errorCode, type FileFacts, MOST_BYTES, type OpenFile } from './disk.ts';
import { readRegular } from './read-regular.ts';
import { writeAll } from './write-durably.ts';

/**
 * A write of at most this many bytes goes into the system's cache at once, as looking a file up does: both take microseconds, and a way
 * through Node's thread pool takes ten times as long. What may wait for the medium (sync, large writes) never holds the screen up.
 */
const AT_ONCE_BYTES = 65_536;

const WINDOWS = process.platform === 'win32';
const RENAME_PATIENCE_MS = 20_000;
const LONGEST_PAUSE_MS = 100;
const HELD = new Set(['EPERM', 'EACCES', 'EBUSY']);

/** The disk of this machine. */
export const realDisk: Disk = {
  create: async (path) => opened(await open(path, 'ax')),
  readFile: (path, most = MOST_BYTES) => reading(async () => readRegular(path, most)),
  list: (folder) => reading(async () => (await readdir(folder)).sort()),
  makeFolder: async (path) => {
    await mkdir(path).catch((error: unknown) => {
      if (errorCode(error) !== 'EEXIST') throw error;
    });
  },
  facts: (path) => reading(() => factsOf(path)),
  realPath: (path) => reading(() => realpath(path)),
  rename: WINDOWS ? patiently(rename, (ms) => pause(ms)) : rename,
  unlink: (path) => unlink(path),
  syncFolder: (folder) => (WINDOWS ? syncByFile(realDisk, folder) : syncFolder(folder)),
  watch: watchFolder,
};

function watchFolder(folder: string, changed: () => void): () => void {
  try {
    const watcher = watch(folder, { persistent: false }, changed);
    // A folder that goes away ends the watching; nothing more is to be told.
    watcher.on('error', () => watcher.close());
    return () => watcher.close();
  } catch {
    return () => {};
  }
}

let flushes = 0;

/**
 * Waits until the names of a folder are on the medium where a folder can't be synced: Windows keeps names in a log that is flushed in order, and
 * flushing a file that was made after a rename takes the rename with it. The file is one that the next opening takes away if it is left.
 */
export async function syncByFile(disk: Pick<Disk, 'create' | 'unlink'>, folder: string): Promise<void> {
  flushes += 1;
  const path = join(folder, `.names.${process.pid.toString(36)}${flushes.toString(36)}.tmp`);
  const file = await disk.create(path);
  try {
    await writeAll(file, new Uint8Array([0x0a]));
    await file.sync();
  } finally {
    await file.close();
    // One that a scanner holds stays: what it was for is done.
    await disk.unlink(path).catch(() => {});
  }
}

/** Does what reads only: a refusal of it is one to read. */
async function reading<T>(run: () => Promise<T>): Promise<T> {
  try {
    return await run();
  } catch (error) {
    throw asReading(error);
  }
}

function opened(handle: FileHandle): OpenFile {
  return {
    write: async (bytes) =>
      bytes.length <= AT_ONCE_BYTES
        ? writeSync(handle.fd, bytes, 0, bytes.length, null)
        : (await handle.write(bytes, 0, bytes.length, null)).bytesWritten,
    sync: () => handle.sync(),
    close: () => handle.close(),
  };
}

async function factsOf(path: string): Promise<FileFacts> {
  const stats = lstatSync(path, { bigint: true });
  const kind = stats.isSymbolicLink()
    ? 'link'
    : stats.isDirectory()
      ? 'folder'
      : stats.isFile()
        ? 'file'
        : 'other';
  return {
    kind,
    size: Number(stats.size),
    changedMs: Number(stats.mtimeMs),
    device: String(stats.dev),
    inode: String(stats.ino),
  };
}

async function syncFolder(path: string): Promise<void> {
  const handle = await open(path, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/**
 * Renames as Windows needs it: while a scanner or a sync client holds a file, renaming over it fails, and is tried again
 * with short pauses for up to twenty seconds. Any other refusal is final at once.
 */
export function patiently(
  renameOnce: (from: string, to: string) => Promise<void>,
  wait: (ms: number) => Promise<void>,
): (from: string, to: string) => Promise<void> {
  return async (from, to) => {
    let waited = 0;
    for (let ms = 10; ; ms = Math.min(LONGEST_PAUSE_MS, ms * 2)) {
      try {
        return await renameOnce(from, to);
      } catch (error) {
        if (!HELD.has(errorCode(error) ?? '') || waited >= RENAME_PATIENCE_MS) throw error;
      }
      await wait(ms);
      waited += ms;
    }
  };
}
