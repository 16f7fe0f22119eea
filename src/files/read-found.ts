import { join } from 'node:path';
import type { Finding } from '../finding/finding.ts';
import type { Migration } from '../formats/upgrade.ts';
import type { Disk, FileFacts } from './disk.ts';
import { documentPath } from './document-file.ts';
import { nearsLimit } from './file-size.ts';
import { missingFile, olderFormat, rebuilt } from './findings.ts';
import { rebuild } from './fold.ts';
import { workWords } from './journal-findings.ts';
import type { WorkLine } from './journal-line.ts';
import type { ToKeep } from './keep-copy.ts';
import { type FoundFile, nameFromKey } from './list-documents.ts';
import { type LoadedDocument, loadDocument } from './load-document.ts';
import { readProjectFile } from './read-file.ts';
import { DOCUMENT_LIMITS } from './read-json.ts';
import { loadSnapshot, type Snapshot } from './snapshot.ts';

/** What came of one document: as loaded, why it must not be written, what was found, what is to be kept. */
export interface FoundDocument {
  readonly loaded?: LoadedDocument;
  readonly closed?: string;
  readonly findings: readonly Finding[];
  readonly keep: readonly ToKeep[];
}

const NOWHERE = { generation: 0, sequence: 0 };
const UNREADABLE = 'its file cannot be read';
/** Why a document that the journal knows and that has no file can't be written. */
export const MISSING = 'its file is missing';

/** Reads a document's file and folds its lines of the journal in; one that can't be read is rebuilt from them where that can be. */
export async function readFound(
  disk: Disk,
  folder: string,
  file: FoundFile,
  lines: readonly WorkLine[],
  migrations: readonly Migration[],
): Promise<FoundDocument> {
  // Looked at before it is read: a change in between shows as one when the file is next written.
  const facts = await disk.facts(join(folder, file.file)).catch(() => undefined);
  const bytes = async (): Promise<Uint8Array | undefined> => {
    const read = await readProjectFile(disk, folder, file.file, DOCUMENT_LIMITS);
    return read.ok ? read.value : undefined;
  };
  const snapshot = await loadSnapshot(disk, folder, file.name, migrations);
  const found = snapshot.ok
    ? await fromSnapshot(file, snapshot.value, lines, bytes)
    : await fromJournal(file, snapshot.findings, lines, bytes);
  if (found.loaded === undefined || facts === undefined) return found;
  const near = snapshot.ok ? nearsLimit(file.name, facts.size) : undefined;
  return {
    ...found,
    loaded: withFacts(found.loaded, facts),
    findings: near === undefined ? found.findings : [...found.findings, near],
  };
}

function withFacts(loaded: LoadedDocument, facts: FileFacts): LoadedDocument {
  return { ...loaded, facts };
}

async function fromSnapshot(
  { file }: FoundFile,
  snapshot: Snapshot,
  lines: readonly WorkLine[],
  bytes: () => Promise<Uint8Array | undefined>,
): Promise<FoundDocument> {
  const read = loadDocument(file, snapshot, lines);
  const from = snapshot.upgradedFrom;
  if (from === undefined && read.loaded.copy === undefined) return { ...read, keep: [] };
  const original = await bytes();
  if (original === undefined) return { ...read, closed: UNREADABLE, keep: [] };
  // What was edited or laid over the file is taken in; its bytes are kept all the same before anything is written over them.
  if (from === undefined) return { ...read, keep: [{ file, bytes: original, because: 'as-found' }] };
  return {
    ...read,
    // Marked as if its file lacked everything, so that it is written in today's format.
    loaded: { ...read.loaded, firstMissing: 0 },
    findings: [...read.findings, upgradedFinding(file, from)],
    keep: [{ file, bytes: original, because: `format-${from}` }],
  };
}

async function fromJournal(
  { file, name }: FoundFile,
  findings: readonly Finding[],
  lines: readonly WorkLine[],
  bytes: () => Promise<Uint8Array | undefined>,
): Promise<FoundDocument> {
  const newer = findings.some((finding) => finding.code === 'newer-format');
  const document = newer ? undefined : rebuild(name, lines);
  if (document === undefined) return { closed: UNREADABLE, findings, keep: [] };
  const loaded = { document, position: NOWHERE, firstMissing: lines[0]?.seq ?? 0 };
  const original = await bytes();
  // What can't be read can't be kept either, so it must not be written over.
  if (original === undefined) return { loaded, closed: UNREADABLE, findings, keep: [] };
  return {
    loaded,
    findings: [
      ...findings.map((finding) => ({ ...finding, severity: 'warning' as const })),
      rebuiltFinding(file),
    ],
    keep: [{ file, bytes: original, because: 'unreadable' }],
  };
}

/** A document that the journal knows and that has no file: its making is in the journal, or it is missing. */
export function withoutFile(key: string, lines: readonly WorkLine[]): FoundDocument {
  const name = nameFromKey(key);
  const document = name === undefined ? undefined : rebuild(name, lines);
  if (document === undefined) return { closed: MISSING, findings: [missingFinding(key, lines)], keep: [] };
  return {
    loaded: { document, position: NOWHERE, firstMissing: lines[0]?.seq ?? 0, folded: lines },
    findings: [],
    keep: [],
  };
}

function missingFinding(key: string, lines: readonly WorkLine[]): Finding {
  const name = nameFromKey(key);
  const held = lines.length === 0 ? 'nothing' : lines.length === 1 ? 'one edit' : `${lines.length} edits`;
  return missingFile.at(
    { file: name === undefined ? key : documentPath(name) },
    {
      ...(lines.length === 0 ? {} : { excerpt: lines.map(workWords).join('; ').slice(0, 400) }),
      problem: `the journal knows this file but it is gone; of its edits the journal in use has ${held}`,
      remedy:
        'Put the file back, an older copy too: edits that it lacks are added from what the journal set aside. Or take a copy of it in with receive. If it is gone for good: Enter on the screen of what was found (Ctrl-F), or offsider recover. No new one is started in its place.',
    },
  );
}

function upgradedFinding(file: string, from: number): Finding {
  return olderFormat.at(
    { file, field: 'format' },
    {
      problem: `it was in format ${from} and was brought up to date`,
      remedy: 'Nothing to do. The original is kept in journal/kept.',
    },
  );
}

function rebuiltFinding(file: string): Finding {
  return rebuilt.at(
    { file },
    {
      problem: 'it was rebuilt from the journal, every saved row in it',
      remedy: 'Nothing to do. The broken file is kept in journal/kept.',
    },
  );
}
