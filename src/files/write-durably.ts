import { basename, dirname, join } from 'node:path';
import type { Disk, OpenFile } from './disk.ts';

/** Writes every byte, however few the disk takes at a time; throws where it takes none. */
export async function writeAll(file: OpenFile, bytes: Uint8Array): Promise<void> {
  let written = 0;
  while (written < bytes.length) {
    const taken = await file.write(written === 0 ? bytes : bytes.subarray(written));
    if (taken <= 0) throw new Error('the disk takes no more bytes');
    written += taken;
  }
}

/** Makes a new file that is on the medium, name and bytes, when this resolves; a part-made one is taken away where it can be. */
export async function createDurably(disk: Disk, path: string, bytes: Uint8Array): Promise<void> {
  const file = await disk.create(path);
  try {
    await writeAll(file, bytes);
    await file.sync();
    await file.close();
    await disk.syncFolder(dirname(path));
  } catch (error) {
    await file.close().catch(() => {});
    await disk.unlink(path).catch(() => {});
    throw error;
  }
}

/**
 * Replaces a file's content so that at every moment, power cuts included, the old bytes or the new ones stand there
 * whole: a temporary name in the same folder, every byte (counted), fsync, rename, fsync of the folder. `bytes` may come in parts, one after
 * another. `token` keeps the temporary name apart from any other writer's.
 */
export async function writeDurably(
  disk: Disk,
  path: string,
  bytes: Uint8Array | Iterable<Uint8Array>,
  token: string,
): Promise<void> {
  const temporary = join(dirname(path), temporaryName(basename(path), token));
  const file = await disk.create(temporary);
  try {
    for (const chunk of bytes instanceof Uint8Array ? [bytes] : chunksOf(bytes)) await writeAll(file, chunk);
    await file.sync();
    await file.close();
    await disk.rename(temporary, path);
  } catch (error) {
    await file.close().catch(() => {});
    await disk.unlink(temporary).catch(() => {});
    throw error;
  }
  await disk.syncFolder(dirname(path));
}

/** So many bytes are written at a time. */
const CHUNK = 128 * 1024;

/** Many small parts as few larger ones. */
function* chunksOf(parts: Iterable<Uint8Array>): Generator<Uint8Array> {
  let waiting: Uint8Array[] = [];
  let size = 0;
  for (const part of parts) {
    waiting.push(part);
    size += part.length;
    if (size < CHUNK) continue;
    yield Buffer.concat(waiting);
    waiting = [];
    size = 0;
  }
  if (size > 0) yield Buffer.concat(waiting);
}

function temporaryName(name: string, token: string): string {
  return `.${name}.${token}.tmp`;
}

/** True for a name that only an interrupted writeDurably leaves behind. */
export function isTemporaryName(name: string): boolean {
  return /^\..+\.[0-9a-z]+\.tmp$/.test(name);
}

/** Makes a folder below one that is there, its name on the medium when this resolves. */
export async function ensureFolder(disk: Disk, path: string): Promise<void> {
  await disk.makeFolder(path);
  await disk.syncFolder(dirname(path));
}
