import { dirname, join } from 'node:path';
import { type Disk, diskRefusal, factsIfThere } from './disk.ts';
import { createDurably, ensureFolder, writeDurably } from './write-durably.ts';

/** What was made in a new folder: the folders above it and itself, and its files, in the order they were made. */
export interface MadeFiles {
  readonly folders: readonly string[];
  readonly files: readonly string[];
}

/**
 * Makes a folder (those above it too) and new files in it, names and bytes on the medium when this resolves. A file that is there already,
 * as when two do this at once, rejects with EEXIST: only the first of two makes its first file. `made` grows as things are made, so that
 * whoever calls can take back what is theirs and nothing else.
 */
export async function makeFiles(
  disk: Disk,
  folder: string,
  files: readonly { readonly file: string; readonly text: string }[],
  made: { folders: readonly string[]; files: readonly string[] },
): Promise<void> {
  const missing: string[] = [];
  for (let path = folder; (await factsIfThere(disk, path)) === undefined; path = dirname(path)) {
    // A drive that is not there has nothing above it.
    if (path === dirname(path)) throw diskRefusal('ENOENT');
    missing.unshift(path);
  }
  for (const path of missing) {
    await ensureFolder(disk, path);
    made.folders = [...made.folders, path];
  }
  for (const [index, { file, text }] of files.entries()) {
    const path = join(folder, file);
    const bytes = new TextEncoder().encode(text);
    // Whoever makes the first file has the folder. The others come under their names only whole: an empty project.json would pass for a project.
    if (index === 0) await createDurably(disk, path, bytes);
    else if ((await factsIfThere(disk, path)) !== undefined) throw diskRefusal('EEXIST');
    else await writeDurably(disk, path, bytes, 'new');
    made.files = [...made.files, path];
  }
}
