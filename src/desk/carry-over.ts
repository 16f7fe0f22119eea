import { dirname, join } from 'node:path';
import { type Disk, factsIfThere, whyRefused } from '../files/disk.ts';
import { DOCUMENT_KINDS } from '../files/document-file.ts';
import { leftBehind } from '../files/findings.ts';
import { generationOf, JOURNAL_FOLDER, pastOf } from '../files/journal.ts';
import { KEPT_FOLDER } from '../files/keep-copy.ts';
import { isLockName } from '../files/lock.ts';
import { DOCUMENT_LIMITS } from '../files/read-json.ts';
import { REPLICA_FILE } from '../files/replica.ts';
import { createDurably, ensureFolder, isTemporaryName } from '../files/write-durably.ts';
import type { Finding } from '../finding/finding.ts';

/** Folders of a project of which every file is taken along. */
const OURS: ReadonlySet<string> = new Set([
  JOURNAL_FOLDER,
  KEPT_FOLDER,
  ...Object.values(DOCUMENT_KINDS).map((kind) => kind.folder),
  'outbox',
]);
const DEEPEST = 4;

/** A file that is not taken along, and why. */
interface Left {
  readonly file: string;
  readonly problem: string;
}

/**
 * Copies the files of a project that no one has in memory to another folder, byte by byte: what can't be read as a document,
 * what is kept aside, what was sent, what the logging schema extends. `held` are files that are written there anyway. Gives a
 * finding for everything that is not taken along: folders that are none of ours (photographs), links, what can't be read.
 */
export async function carryOver(
  disk: Disk,
  from: string,
  to: string,
  held: ReadonlySet<string>,
): Promise<readonly Finding[]> {
  const left: Left[] = [];
  const found = await filesBelow(disk, from, '', left);
  for (const file of found) {
    if (held.has(file) || staysBehind(file)) continue;
    try {
      await makeWay(disk, to, file);
      await createDurably(disk, join(to, file), await disk.readFile(join(from, file)));
    } catch (error) {
      left.push({ file, problem: `it could not be copied: ${whyRefused(error)}` });
    }
  }
  return left.map((each) => leftFinding(from, each));
}

/** Files that belong to the folder and the console they are in: locks, the replica, generations, what an interrupted write left. */
function staysBehind(file: string): boolean {
  const name = file.slice(file.lastIndexOf('/') + 1);
  return (
    isTemporaryName(name) ||
    file === REPLICA_FILE ||
    (dirname(file) === JOURNAL_FOLDER &&
      (isLockName(name) || generationOf(name) !== undefined || pastOf(name) !== undefined))
  );
}

/** Files below a folder that are to be taken along, from the top of the project; what is not is added to `left`. */
async function filesBelow(disk: Disk, top: string, room: string, left: Left[]): Promise<readonly string[]> {
  const files: string[] = [];
  const names = await disk.list(join(top, room)).catch((error: unknown) => {
    left.push({
      file: room === '' ? 'its other files' : room,
      problem: `it can't be read: ${whyRefused(error)}`,
    });
    return [];
  });
  for (const name of names) {
    const file = room === '' ? name : `${room}/${name}`;
    const facts = await factsIfThere(disk, join(top, file)).catch(() => undefined);
    if (facts === undefined) left.push({ file, problem: "it can't be looked at" });
    else if (facts.kind === 'folder') files.push(...(await folderBelow(disk, top, file, left)));
    else if (facts.kind !== 'file') left.push({ file, problem: 'it is a link, or no file' });
    else if (facts.size > DOCUMENT_LIMITS.bytes)
      left.push({ file, problem: 'it is too large to take along' });
    else files.push(file);
  }
  return files;
}

/** Of a folder that is none of ours only what a logging schema may extend is taken along; that there is more is said once. */
async function folderBelow(
  disk: Disk,
  top: string,
  folder: string,
  left: Left[],
): Promise<readonly string[]> {
  if (folder.split('/').length > DEEPEST) {
    left.push({ file: folder, problem: 'it is too deep to be a folder of the project' });
    return [];
  }
  if (OURS.has(folder)) return filesBelow(disk, top, folder, left);
  const files = await filesBelow(disk, top, folder, left);
  const schemas = files.filter((file) => file.endsWith('.json'));
  const others = files.length - schemas.length;
  if (others > 0)
    left.push({
      file: folder,
      problem: `${others} ${others === 1 ? 'file' : 'files'} in it are none of the project's`,
    });
  return schemas;
}

async function makeWay(disk: Disk, to: string, file: string): Promise<void> {
  const steps = dirname(file).split('/');
  for (let depth = 1; depth <= steps.length; depth += 1)
    if (steps[0] !== '.') await ensureFolder(disk, join(to, ...steps.slice(0, depth)));
}

function leftFinding(from: string, { file, problem }: Left): Finding {
  return leftBehind.at(
    { file },
    {
      problem: `it was not taken along: ${problem}`,
      remedy: `It is still in ${from}; copy it by hand if you want it.`,
    },
  );
}
