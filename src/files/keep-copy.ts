import { join } from 'node:path';
import { bytesIfThere, type Disk, isGuarded } from './disk.ts';
import { JOURNAL_FOLDER, sameBytes } from './journal.ts';
import { createDurably, ensureFolder } from './write-durably.ts';

/** A file to be kept as it was before anything is written over it, with why, for its name among the kept. */
export interface ToKeep {
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly because: string;
}

/** Where what is about to be overwritten or dropped is kept. */
export const KEPT_FOLDER = `${JOURNAL_FOLDER}/kept`;

/**
 * Keeps bytes as they are, durably, under a name that says what they were and why they are kept
 * (`holes-ZQRC004.json.unreadable.1`). Bytes kept already are not kept twice. Gives the name.
 */
export async function keepCopy(disk: Disk, folder: string, copy: ToKeep): Promise<string> {
  await ensureFolder(disk, join(folder, KEPT_FOLDER));
  for (let number = 1; ; number += 1) {
    const name = `${KEPT_FOLDER}/${copy.file.replaceAll('/', '-')}.${copy.because}.${number}`;
    const found = await heldThere(disk, join(folder, name), copy.bytes.length);
    if (found === undefined) {
      await createDurably(disk, join(folder, name), copy.bytes);
      return name;
    }
    if (found !== 'something else' && sameBytes(found, copy.bytes)) return name;
  }
}

/** The bytes kept under a name; a longer file, a link or no file is not what is to be kept, and stays. */
async function heldThere(
  disk: Disk,
  path: string,
  most: number,
): Promise<Uint8Array | 'something else' | undefined> {
  try {
    return await bytesIfThere(disk, path, most);
  } catch (error) {
    if (isGuarded(error)) return 'something else';
    throw error;
  }
}
