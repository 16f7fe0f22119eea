import { join } from 'node:path';
import { type Disk, type FileFacts, factsIfThere, sameFile } from '../files/disk.ts';
import { documentPath } from '../files/document-file.ts';
import { nearsLimit } from '../files/file-size.ts';
import { retireGenerations } from '../files/journal.ts';
import { printAhead } from '../files/print-document.ts';
import { FileRefused } from '../files/read-file.ts';
import { saveSnapshot } from '../files/snapshot.ts';
import type { Finding } from '../finding/finding.ts';
import type { Document } from '../record/document.ts';
import { needsSnapshot, type Shelf } from './shelf.ts';
import type { Writer } from './writer.ts';

/** What taking snapshots needs. */
export interface SnapshotNeeds {
  readonly disk: Disk;
  readonly folder: string;
  readonly shelf: Shelf;
  readonly writer: Writer;
  /** Facts of each document's file as last read or written by us, by key. */
  readonly facts: Map<string, FileFacts>;
  readonly isClosed: (key: string) => boolean;
  /** Rejects where another console has taken over. */
  readonly requireOurs: () => Promise<void>;
  /** A file that someone else wrote since: keeps it and takes it in; our snapshot waits for the next round. */
  readonly changedOutside: (document: Document) => Promise<void>;
  /** Says what was found of a file that was to be written; the same is said once. */
  readonly found: (findings: readonly Finding[]) => void;
  readonly token: () => string;
  /** Generations that hold damage: kept, not deleted. */
  readonly spoiled: ReadonlySet<number>;
}

/**
 * Writes the file of every document that the journal is ahead of; then, where no line of the journal is needed any
 * more, begins a new generation and drops the old ones. Rows are saved in between. Rejects at the first file that can't
 * be written: nothing is lost by that, the journal holds it.
 */
export async function takeSnapshots(needs: SnapshotNeeds): Promise<void> {
  const { shelf, writer } = needs;
  for (const key of shelf.keys()) {
    const held = shelf.get(key);
    if (held === undefined || !needsSnapshot(held) || needs.isClosed(key)) continue;
    // Rows are saved while it is printed: only the writing itself has to be between them.
    if (held.durable !== undefined) await printAhead(held.durable);
    await writer.between(() => takeSnapshot(needs, key));
  }
  await writer.between(() => turnOver(needs));
}

/** Writes one document's file, whatever the journal holds of it. Only between lines of the journal. */
export async function takeSnapshot(needs: SnapshotNeeds, key: string): Promise<void> {
  const { disk, folder, shelf, writer } = needs;
  const held = shelf.get(key);
  if (held?.durable === undefined) return;
  await needs.requireOurs();
  const path = join(folder, documentPath(held.durable));
  const now = await factsIfThere(disk, path);
  const before = needs.facts.get(key);
  if (now !== undefined && (before === undefined || !sameFile(now, before))) {
    await needs.changedOutside(held.durable);
    needs.facts.set(key, now);
    return;
  }
  const { generation, safe } = writer.state();
  const stored = { document: held.durable, position: { generation, sequence: safe } };
  try {
    await saveSnapshot(disk, folder, stored, needs.token());
  } catch (error) {
    if (!(error instanceof FileRefused)) throw error;
    // The journal keeps its lines; the files of the other documents are written all the same.
    needs.found(error.findings);
    return;
  }
  const written = await factsIfThere(disk, path);
  if (written !== undefined) {
    needs.facts.set(key, written);
    const near = nearsLimit(held.durable, written.size);
    if (near !== undefined) needs.found([near]);
  }
  const latest = shelf.get(key);
  if (latest !== undefined) shelf.update(key, { ...latest, snapshotSequence: safe });
}

async function turnOver(needs: SnapshotNeeds): Promise<void> {
  const { disk, folder, writer } = needs;
  await needs.requireOurs();
  const clear = await writer.turnOver();
  if (clear) await retireGenerations(disk, folder, writer.state().generation, needs.spoiled);
}
