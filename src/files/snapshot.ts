import { join } from 'node:path';
import { type Adapter, Low } from 'lowdb';
import { ok, type Result, refused } from '../finding/finding.ts';
import { type Migration, upgrade } from '../formats/upgrade.ts';
import { type DocumentName, emptyDocument } from '../record/document.ts';
import type { JsonObject } from '../record/json.ts';
import type { Disk } from './disk.ts';
import {
  documentPath,
  formatOf,
  OLDEST_FORMAT,
  readDocumentFile,
  type StoredDocument,
} from './document-file.ts';
import { tooLarge } from './file-size.ts';
import { wrongShape } from './findings.ts';
import { digestOf } from './load-document.ts';
import { documentParts } from './print-document.ts';
import { FileRefused, readProjectFile } from './read-file.ts';
import { DOCUMENT_LIMITS, type JsonText, readJsonText } from './read-json.ts';
import { verified } from './verified.ts';
import { writeDurably } from './write-durably.ts';

/** A snapshot as found: the document, and the format it was brought up from, if it was older. */
export interface Snapshot extends StoredDocument {
  readonly upgradedFrom?: number;
}

/**
 * lowdb's adapter for one document's file. Reading throws on a missing or broken file, where lowdb's stock adapter
 * takes a missing one for empty; writing returns only when the bytes and the name are on the medium.
 */
function snapshotAdapter(
  disk: Disk,
  folder: string,
  name: DocumentName,
  options: { readonly migrations: readonly Migration[]; readonly token: () => string },
): Adapter<Snapshot> {
  const file = documentPath(name);
  return {
    read: async () => {
      const found = await readSnapshot(disk, folder, name, options.migrations);
      if (!found.ok) throw new FileRefused(found.findings);
      return found.value;
    },
    write: async (stored) => {
      let size = 0;
      for (const part of documentParts(stored)) size += part.length;
      const refusal = tooLarge(name, size);
      if (refusal !== undefined) throw new FileRefused([refusal]);
      await writeDurably(disk, join(folder, file), documentParts(stored), options.token());
    },
  };
}

/** Reads a document's file through lowdb. */
export async function loadSnapshot(
  disk: Disk,
  folder: string,
  name: DocumentName,
  migrations: readonly Migration[],
): Promise<Result<Snapshot>> {
  const adapter = snapshotAdapter(disk, folder, name, { migrations, token: () => '' });
  const low = new Low<Snapshot>(adapter, nothing(name));
  try {
    await low.read();
    return ok(low.data);
  } catch (error) {
    if (error instanceof FileRefused) return { ok: false, findings: error.findings };
    throw error;
  }
}

/**
 * Writes a document's file through lowdb; it is on the medium when this resolves. Rejects (FileRefused) where it could not be read
 * again, the file as it was. `token` makes the temporary name unique.
 */
export async function saveSnapshot(
  disk: Disk,
  folder: string,
  stored: StoredDocument,
  token: string,
): Promise<void> {
  const adapter = snapshotAdapter(disk, folder, stored.document, { migrations: [], token: () => token });
  await new Low<Snapshot>(adapter, stored).write();
}

function nothing(name: DocumentName): Snapshot {
  return { document: emptyDocument(name), position: { generation: 0, sequence: 0 } };
}

async function readSnapshot(
  disk: Disk,
  folder: string,
  name: DocumentName,
  migrations: readonly Migration[],
): Promise<Result<Snapshot>> {
  const file = documentPath(name);
  const bytes = await readProjectFile(disk, folder, file, DOCUMENT_LIMITS);
  if (!bytes.ok) return bytes;
  const digest = digestOf(bytes.value);
  const known = verified.get(digest, file);
  if (known !== undefined) return ok(known);
  const json = readJsonText(bytes.value, file, DOCUMENT_LIMITS);
  if (!json.ok) return json;
  const format = formatOf(json.value.value);
  if (typeof format !== 'number' || format >= OLDEST_FORMAT) {
    const read = readDocumentFile(json.value, name);
    if (read.ok) verified.add(digest, file, bytes.value.length, read.value);
    return read;
  }
  const upgraded = upgradedText(json.value, name, migrations);
  if (!upgraded.ok) return upgraded;
  const stored = readDocumentFile(upgraded.value, name);
  return stored.ok ? ok({ ...stored.value, upgradedFrom: format }) : stored;
}

function upgradedText(
  json: JsonText,
  name: DocumentName,
  migrations: readonly Migration[],
): Result<JsonText> {
  const upgraded = upgrade(json.value as JsonObject, name.kind, OLDEST_FORMAT, migrations);
  if (upgraded.ok) return ok({ file: json.file, text: '', value: upgraded.file });
  return refused(
    wrongShape.at(
      { file: json.file, field: 'format' },
      {
        problem: upgraded.problem,
        remedy: 'Open it with the offsider that wrote it, or put back a later copy. Nothing was changed.',
      },
    ),
  );
}
