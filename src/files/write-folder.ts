import { dirname, join } from 'node:path';
import { type Disk, diskRefusal, factsIfThere } from './disk.ts';
import { ensureFolder, writeDurably } from './write-durably.ts';

/**
 * Writes files into a folder and folders below it (made where they are missing, those above too): each is there whole, old or new, at
 * every moment, and is on the medium when this resolves. `file` has forward slashes. Other files there stay.
 */
export async function writeFolder(
  disk: Disk,
  folder: string,
  files: Iterable<{ readonly file: string; readonly bytes: Uint8Array }>,
  token: string,
): Promise<void> {
  const made = new Set<string>();
  for (const { file, bytes } of files) {
    const path = join(folder, ...file.split('/'));
    if (!made.has(dirname(path))) await ensureFolders(disk, dirname(path));
    made.add(dirname(path));
    await writeDurably(disk, path, bytes, token);
  }
}

/** Takes files away that stand below a folder and end with `ending`, all but those to keep; nothing happens where there is no such folder. */
export async function takeAwayOthers(
  disk: Disk,
  folder: string,
  ending: string,
  keep: ReadonlySet<string>,
): Promise<void> {
  const facts = await factsIfThere(disk, folder);
  if (facts?.kind !== 'folder') return;
  for (const name of await disk.list(folder)) {
    const path = join(folder, name);
    const { kind } = await disk.facts(path);
    if (kind === 'folder') await takeAwayOthers(disk, path, ending, keep);
    else if (kind === 'file' && name.endsWith(ending) && !keep.has(path)) await disk.unlink(path);
  }
}

async function ensureFolders(disk: Disk, folder: string): Promise<void> {
  const missing: string[] = [];
  for (let path = folder; (await factsIfThere(disk, path)) === undefined; path = dirname(path)) {
    // A drive that is not there has nothing above it.
    if (path === dirname(path)) throw diskRefusal('ENOENT');
    missing.unshift(path);
  }
  for (const path of missing) await ensureFolder(disk, path);
}
