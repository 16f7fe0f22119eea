import { join } from 'node:path';
import * as z from 'zod';
import { everyEntry } from '../record/ancestry.ts';
import type { Document, Edit, Entry, Id } from '../record/document.ts';
import { bytesIfThere, type Disk, errorCode, isGuarded } from './disk.ts';
import { JOURNAL_FOLDER } from './journal.ts';
import { writeDurably } from './write-durably.ts';

/** Where the replica id of this copy of the project is kept. */
export const REPLICA_FILE = `${JOURNAL_FOLDER}/replica.json`;

const replicaShape = z.strictObject({
  replica: z.string().regex(/^[a-z0-9]{4,12}$/),
  host: z.string(),
  device: z.string(),
  inode: z.string(),
});

/** Far more than it holds, bytes. */
const LARGEST = 4096;

/** No vowels, so that no word comes out, and nothing that is read for something else. */
const ALPHABET = '23456789bcdfghjkmnpqrstvwxyz';
const REPLICA_LENGTH = 6;

/** A new replica id from random bytes: six characters, 28^6 (480 million) of them. */
export function newReplica(random: (bytes: number) => Uint8Array): string {
  let replica = '';
  while (replica.length < REPLICA_LENGTH) {
    for (const byte of random(REPLICA_LENGTH * 2)) {
      // Bytes past the last whole run of the alphabet would make its first characters likelier.
      if (byte < Math.floor(256 / ALPHABET.length) * ALPHABET.length && replica.length < REPLICA_LENGTH)
        replica += ALPHABET[byte % ALPHABET.length] ?? '';
    }
  }
  return replica;
}

/**
 * The replica id of this copy of the project. A folder that was copied (another computer, device or inode than the one
 * the id was made for) gets a new id, so that the two copies never give the same id to two things. So does one that `lacks` documents or ends of
 * histories: the numbers given in them can't be seen, and would be given once more.
 */
export async function takeReplica(
  disk: Disk,
  folder: string,
  host: string,
  random: (bytes: number) => Uint8Array,
  token: string,
  lacks = false,
): Promise<string> {
  const { device, inode } = await disk.facts(await disk.realPath(folder));
  const path = join(folder, REPLICA_FILE);
  const kept = await readReplica(disk, path);
  if (!lacks && kept?.host === host && kept.device === device && kept.inode === inode) return kept.replica;
  const made = { replica: newReplica(random), host, device, inode };
  await writeDurably(disk, path, new TextEncoder().encode(`${JSON.stringify(made)}\n`), token);
  return made.replica;
}

async function readReplica(disk: Disk, path: string): Promise<z.infer<typeof replicaShape> | undefined> {
  try {
    const bytes = await bytesIfThere(disk, path, LARGEST);
    if (bytes === undefined) return undefined;
    return replicaShape.parse(JSON.parse(new TextDecoder().decode(bytes)));
  } catch (error) {
    // A disk that does not answer is no reason for a new id.
    if (errorCode(error) !== undefined && !isGuarded(error)) throw error;
    // One that holds something else is made again: a new replica harms nothing, a wrong one gives an id twice.
    return undefined;
  }
}

/** The highest counter that a replica has used in documents and edits; 0 where none. */
export function highestCounter(
  replica: string,
  documents: Iterable<Document>,
  edits: Iterable<Edit>,
): number {
  let highest = 0;
  const see = (id: Id): void => {
    if (!id.startsWith(`${replica}-`)) return;
    const counter = Number(id.slice(replica.length + 1));
    if (Number.isSafeInteger(counter) && counter > highest) highest = counter;
  };
  const seeEntries = (entries: readonly Entry[]): void => {
    for (const entry of everyEntry(entries)) {
      see(entry.edit);
      for (const change of entry.changes) if ('put' in change) see(change.put[1]);
    }
  };
  for (const document of documents) {
    for (const table of Object.values(document.tables)) for (const id of Object.keys(table)) see(id);
    seeEntries(document.history);
  }
  for (const edit of edits) {
    see(edit.edit);
    for (const part of edit.parts) for (const change of part.changes) if ('put' in change) see(change.put[1]);
  }
  return highest;
}
