import { whyRefused } from '../files/disk.ts';
import { documentPath } from '../files/document-file.ts';
import { editedOutside, fileNearsLimit, fileNotWritten } from '../files/findings.ts';
import { keepCopy } from '../files/keep-copy.ts';
import { FileRefused, readProjectFile } from '../files/read-file.ts';
import { DOCUMENT_LIMITS } from '../files/read-json.ts';
import { loadSnapshot } from '../files/snapshot.ts';
import type { Finding } from '../finding/finding.ts';
import { instantMs } from '../quantity/stamp.ts';
import { type Document, documentKey } from '../record/document.ts';
import type { Done, Received } from './contract.ts';
import { newToken } from './opening.ts';
import { receive } from './saving.ts';
import { needsSnapshot } from './shelf.ts';
import { type SnapshotNeeds, takeSnapshot, takeSnapshots } from './snapshots.ts';
import { displacedFrom, healthOf, type State, tell } from './state.ts';

/** After so many edits the files are written without waiting for a pause. */
const MOST_EDITS_BETWEEN = 200;

/** Of a long history a tenth: its file is written whole each time, and thousands of lines of a pipe would each pay for all above them. */
function mostEditsBetween(state: State): number {
  const histories = state.shelf
    .keys()
    .filter((key) => isBehind(state, key))
    .map((key) => state.shelf.get(key)?.document.history.length ?? 0);
  return Math.max(MOST_EDITS_BETWEEN, ...histories.map((length) => Math.floor(length / 10)));
}

/** Writes the files of the documents that the journal is ahead of. */
export async function fileAway(state: State): Promise<Done> {
  const { shelf, needs } = state;
  state.cancelIdle?.();
  state.cancelIdle = undefined;
  if (!shelf.keys().some((key) => isBehind(state, key))) return { ok: true };
  state.sinceSnapshot = 0;
  state.rodDone = false;
  state.filedAt = needs.now();
  try {
    await takeSnapshots(snapshotNeeds(state));
    return { ok: true };
  } catch (error) {
    return { ok: false, problem: whyRefused(error) };
  }
}

/** Writes the file of a document that someone took away, at once and whole: the journal holds only what came after the file. */
export async function writeAgain(state: State, document: Document): Promise<void> {
  await takeSnapshot(snapshotNeeds(state), documentKey(document));
}

function snapshotNeeds(state: State): SnapshotNeeds {
  const { base, shelf, needs } = state;
  return {
    disk: needs.disk,
    folder: base.folder,
    shelf,
    writer: base.writer,
    facts: base.facts,
    isClosed: (key) => state.closed.has(key),
    requireOurs: async () => {
      const by = await displacedFrom(needs.disk, base.folder, base.lock, base.writer.state().generation);
      if (by !== undefined) throw new Error(by);
    },
    changedOutside: (document) => takeOutsideChange(state, document),
    found: (findings) => sayOnce(state, findings),
    token: () => newToken(needs.random),
    spoiled: base.spoiled,
  };
}

/** Adds findings of a file; one of the same kind about the same file is not said again, whatever its size is by now. */
function sayOnce(state: State, findings: readonly Finding[]): void {
  const fresh = findings.filter(
    ({ code, place, problem }) =>
      !state.findings.some(
        (known) =>
          known.place.file === place.file &&
          (known.problem === problem || (known.code === code && SIZES.has(code))),
      ),
  );
  if (fresh.length === 0) return;
  state.findings = [...state.findings, ...fresh];
  tell(state);
}

const SIZES: ReadonlySet<string> = new Set([fileNearsLimit.code, fileNotWritten.code]);

function isBehind(state: State, key: string): boolean {
  const held = state.shelf.get(key);
  return held !== undefined && !state.closed.has(key) && needsSnapshot(held);
}

/** What follows when the writer has saved something, or has failed to. */
export function afterWriting(state: State): void {
  fileWhenIdle(state);
  tell(state);
}

/** Files away when a rod is done, when the person pauses, or at once after many edits. */
function fileWhenIdle(state: State): void {
  if (state.ended || healthOf(state).state !== 'safe') return;
  if (!state.shelf.keys().some((key) => isBehind(state, key))) return;
  if ((state.rodDone && filedAMinuteAgo(state)) || state.sinceSnapshot >= mostEditsBetween(state)) {
    void fileAway(state);
    return;
  }
  state.cancelIdle?.();
  state.cancelIdle = state.needs.after(state.needs.idleMs, () => void fileAway(state));
}

/** Rods that come from a pipe follow one another at once: they don't write the file each time. */
function filedAMinuteAgo({ filedAt, needs }: State): boolean {
  return filedAt === undefined || instantMs(needs.now()) - instantMs(filedAt) >= 60_000;
}

/** A document's file was written by someone else while the desk was open: it is kept, and taken in as another copy. */
export async function takeOutsideChange(state: State, document: Document): Promise<void> {
  const { disk } = state.needs;
  const { folder } = state.base;
  const file = documentPath(document);
  const bytes = await readProjectFile(disk, folder, file, DOCUMENT_LIMITS);
  if (!bytes.ok) {
    // What can't be read can't be kept, so nothing is written over it: the rows stay in the journal. Said once, not at every try.
    sayOnce(state, bytes.findings);
    throw new FileRefused(bytes.findings);
  }
  const kept = await keepCopy(disk, folder, { file, bytes: bytes.value, because: 'edited-outside' });
  const found = await loadSnapshot(disk, folder, document, []);
  const taken = found.ok
    ? receive(state, found.value.document)
    : { ok: false as const, problem: found.findings[0]?.problem ?? 'it cannot be read' };
  state.findings = [
    ...state.findings,
    editedOutside.at(
      { file, ...(document.kind === 'hole' ? { hole: document.id } : {}) },
      outsideWords(taken, documentKey(document), kept),
    ),
  ];
  tell(state);
}

function outsideWords(
  taken: Received,
  key: string,
  kept: string,
): { readonly problem: string; readonly remedy: string } {
  const wrote = 'another program wrote this file while the project was open';
  const asFound = `The file as it was found is ${kept}.`;
  const look = `Look at it in the history of ${key}. ${asFound}`;
  if (!taken.ok) return { problem: `${wrote}, and it can't be taken in: ${taken.problem}`, remedy: look };
  if (taken.outcome === 'same' || taken.outcome === 'older')
    return {
      problem: `${wrote}; nothing in it is new, and what is logged is kept`,
      remedy: `Nothing to do. If it goes on, look for what writes here: a sync client, a colleague. ${asFound}`,
    };
  return { problem: `${wrote}; the change was taken in`, remedy: look };
}
