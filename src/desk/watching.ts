import { join } from 'node:path';
import { type FileFacts, factsIfThere, sameFile, whyRefused } from '../files/disk.ts';
import { DOCUMENT_KINDS, documentPath } from '../files/document-file.ts';
import { editedOutside } from '../files/findings.ts';
import { HAND_WRITTEN } from '../files/project-folder.ts';
import { type Document, documentKey } from '../record/document.ts';
import { takeOutsideChange, writeAgain } from './filing.ts';
import { type State, tell } from './state.ts';

/** A copy takes a moment to be whole, and several changes come together. */
const SETTLE_MS = 1000;

/**
 * Compares the files of documents edited since the last look, or of all, with what was last read or written by us. One that another program
 * wrote is kept and taken in, one that is gone is written again; either is said. Comes in turn with our own writing, so that our own is never
 * taken for another's.
 */
export async function lookAtFiles(state: State, which: 'edited' | 'all'): Promise<void> {
  if (which === 'all') for (const key of state.shelf.keys()) state.toLookAt.add(key);
  if (state.looking || state.ended || state.toLookAt.size === 0) return;
  state.looking = true;
  const look = async (): Promise<void> => {
    for (const key of state.toLookAt) {
      state.toLookAt.delete(key);
      await lookAt(state, key);
    }
  };
  // Where lines can't be written, or a file can't be read, the screen says so already; they are looked at after the next edit.
  await state.base.writer.between(look).catch(() => state.toLookAt.clear());
  state.looking = false;
}

/** Looks at the files soon after anything changed in their folders; gives the way to end that. Costs nothing while nothing changes. */
export function watchFiles(state: State): () => void {
  const { disk, after } = state.needs;
  let callOff: (() => void) | undefined;
  const look = (): void => {
    callOff = undefined;
    void lookAtFiles(state, 'all');
  };
  const changed = (): void => {
    callOff ??= after(SETTLE_MS, look);
  };
  const folders = Object.values(DOCUMENT_KINDS).map((kind) => join(state.base.folder, kind.folder));
  const stops = folders.map((folder) => disk.watch?.(folder, changed));
  return () => {
    for (const stop of stops) stop?.();
    callOff?.();
  };
}

async function lookAt(state: State, key: string): Promise<void> {
  const { base, shelf, needs } = state;
  const document = shelf.get(key)?.durable;
  const before = base.facts.get(key);
  if (document === undefined || before === undefined || state.closed.has(key)) return;
  const now = await factsIfThere(needs.disk, join(base.folder, documentPath(document)));
  if (now !== undefined && (sameFile(now, before) || isRefused(state, key, now))) return;
  if (now === undefined) return putBack(state, document);
  state.refusedFiles.set(key, now);
  await takeOutsideChange(state, document);
  state.refusedFiles.delete(key);
  base.facts.set(key, now);
  // Whatever lies there now, it is not what we wrote: the file is written again from what the journal and the shelf hold.
  const held = shelf.get(key);
  if (held !== undefined) shelf.update(key, { ...held, snapshotSequence: -1 });
}

/** True of a file that could not be read when it was looked at, and is the same still. */
function isRefused(state: State, key: string, now: FileFacts): boolean {
  const refused = state.refusedFiles.get(key);
  return refused !== undefined && sameFile(now, refused);
}

/**
 * Writes a file that is gone again, at once: only this console holds the whole document then, for the journal holds what came after the file.
 * What is said of it is what came of that.
 */
async function putBack(state: State, document: Document): Promise<void> {
  const { base, needs } = state;
  // Where the whole project is gone (a stick pulled out) this rejects: that is said when the next row is not saved.
  await needs.disk.facts(join(base.folder, HAND_WRITTEN.project));
  const key = documentKey(document);
  const held = state.shelf.get(key);
  if (held !== undefined) state.shelf.update(key, { ...held, snapshotSequence: -1 });
  base.facts.delete(key);
  let why: string | undefined;
  try {
    await writeAgain(state, document);
    if (!base.facts.has(key)) why = 'it can’t be written as it is';
  } catch (error) {
    why = whyRefused(error);
  }
  const { kind, id } = document;
  state.findings = [
    ...state.findings,
    editedOutside.at(
      { file: documentPath(document), ...(kind === 'hole' ? { hole: id } : {}) },
      why === undefined ? WRITTEN_AGAIN : notWrittenAgain(why),
    ),
  ];
  tell(state);
}

const WRITTEN_AGAIN = {
  problem: 'another program took this file away while the project was open; it was written again, whole',
  remedy: 'Look for what takes files away: a sync client, a clean-up, a colleague.',
};

const notWrittenAgain = (why: string) => ({
  problem: `another program took this file away while the project was open, and it could not be written again: ${why}`,
  remedy:
    'Only this console holds the whole of it. Don’t close it: ;elsewhere writes everything to another folder.',
});
