import { join } from 'node:path';
import { type Disk, isMissing } from './disk.ts';
import { JOURNAL_FOLDER, sameBytes } from './journal.ts';
import type { ToKeep } from './project-folder.ts';
import { createDurably, ensureFolder } from './write-durably.ts';

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
    const found = await bytesAt(disk, join(folder, name));
    if (found === undefined) {
      await createDurably(disk, join(folder, name), copy.bytes);
      return name;
    }
    if (sameBytes(found, copy.bytes)) return name;
  }
}

async function bytesAt(disk: Disk, path: string): Promise<Uint8Array | undefined> {
  try {
    return await disk.readFile(path);
  } catch (error) {
    if (isMissing(error)) return undefined;
    throw error;
  }
}
