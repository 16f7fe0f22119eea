import { documentPath } from '../files/document-file.ts';
import { copiesMerged } from '../files/findings.ts';
import { withWhatIsHere } from '../files/lock.ts';
import { notWhole } from '../files/project-folder.ts';
import { asChange } from '../record/chain.ts';
import { type Document, documentKey, type Edit, type Entry } from '../record/document.ts';
import { clockFindings } from '../standing/clock.ts';
import { makeBase } from './base.ts';
import { writeByHand, writeOut } from './by-hand.ts';
import type { Desk, Done } from './contract.ts';
import { knownCopies, rememberCopy, writtenTexts } from './copies.ts';
import { afterWriting, fileAway } from './filing.ts';
import { journalAhead, notTakenIn } from './found.ts';
import { letDocumentGo, missingDocuments, restoreFromJournal } from './missing.ts';
import { moveTo } from './moving.ts';
import type { Opened } from './opening.ts';
import { receive, redo, submit, undo, undoable } from './saving.ts';
import { shelfOf } from './shelf.ts';
import { healthOf, newId, type SessionNeeds, type State, tell } from './state.ts';
import { afterEdit, NEW_SITTING } from './undo.ts';
import { keepWhatIsLeft, putInUnsaved } from './unsaved.ts';
import { lookAtFiles, watchFiles } from './watching.ts';

/** Begins work on a project that is open for writing, and takes in what was edited outside. */
export async function startSession(folder: string, opened: Opened, needs: SessionNeeds): Promise<Desk> {
  const state = newState(folder, opened, needs);
  state.findings = [...state.findings, ...journalAhead(opened.read.documents)];
  for (const { copy } of opened.read.documents.values()) if (copy !== undefined) takeFoundCopy(state, copy);
  await putInUnsaved(state);
  state.findings = [...state.findings, ...clockFindings(state.shelf.standing().values(), needs.now())];
  return deskOn(state);
}

/** Takes in a file as it was edited outside, or another copy that was laid over ours; one that can't be is said, and is kept. */
function takeFoundCopy(state: State, copy: Document): void {
  const taken = receive(state, copy);
  if (taken.ok) {
    const entry = taken.document.history.at(-1);
    if (entry?.outside === true) state.sitting = afterEdit(state.sitting, editOf(taken.document, entry));
    return;
  }
  const file = documentPath(copy);
  // It is kept aside, so ours may be written over it.
  const held = state.shelf.get(documentKey(copy));
  if (held !== undefined) state.shelf.update(documentKey(copy), { ...held, snapshotSequence: -1 });
  const others = state.findings.filter(
    ({ code, place }) => code !== copiesMerged.code || place.file !== file,
  );
  state.findings = [...others, notTakenIn(file, taken.problem)];
}

/** An entry of one document as an edit of this sitting, so that it can be taken back like one. */
function editOf({ kind, id }: Document, entry: Entry): Edit {
  const { edit, at, by, what, changes } = entry;
  return { edit, at, by, what, parts: [{ document: { kind, id }, changes: changes.map(asChange) }] };
}

function newState(folder: string, opened: Opened, needs: SessionNeeds): State {
  const { read, lock, replica, counter } = opened;
  const shelf = shelfOf(read.documents, read.lastSequence);
  const facts = [...read.documents].flatMap(([key, loaded]) =>
    loaded.facts === undefined ? [] : [[key, loaded.facts] as const],
  );
  const closed = new Map(read.closed);
  const letGo = [...read.letGo];
  const lacking = new Map(read.lacking);
  const start = { generation: read.lastGeneration, sequence: read.lastSequence, lines: read.lines };
  const base = makeBase({
    needs,
    folder,
    lock,
    replica,
    facts: new Map(facts),
    spoiled: read.spoiled,
    shelf,
    closed,
    letGo,
    lacking,
    start,
    changed: () => {
      afterWriting(state);
      void lookAtFiles(state, 'edited');
    },
  });
  const state: State = {
    needs,
    shelf,
    closed,
    letGo,
    lacking,
    listeners: new Set(),
    byHand: { project: read.project, logging: read.logging },
    base,
    counter,
    sitting: NEW_SITTING,
    findings: [...read.findings, ...withWhatIsHere(lock.findings, notWhole(read))],
    savedAt: undefined,
    sinceSnapshot: 0,
    rodDone: false,
    filedAt: undefined,
    cancelIdle: undefined,
    toLookAt: new Set(),
    looking: false,
    refusedFiles: new Map(),
    ended: false,
  };
  return state;
}

function deskOn(state: State): Desk {
  return {
    folder: () => state.base.folder,
    readOnly: false,
    person: state.needs.person,
    replica: () => state.base.replica,
    documents: () => state.shelf.standing(),
    get: (name) => state.shelf.standing().get(documentKey(name)),
    findings: () => state.findings,
    closed: state.closed,
    project: () => state.byHand.project,
    logging: () => state.byHand.logging,
    newId: () => newId(state),
    now: state.needs.now,
    health: () => healthOf(state),
    submit: (request) => submit(state, request),
    undo: (inHand) => undo(state, inHand),
    undoable: (inHand) => undoable(state, inHand),
    redo: () => redo(state),
    receive: (copy) => receive(state, copy),
    letGo: (name, why) => letDocumentGo(state, name, why),
    restore: (name, making) => restoreFromJournal(state, name, making),
    missing: () => missingDocuments(state),
    writeByHand: (file, text) => writeByHand(state, file, text),
    writeOut: (file, bytes) => writeOut(state, file, bytes),
    knownCopies: () => knownCopies(state.needs.disk, state.base.folder),
    rememberCopy: (heard) => rememberCopy(state, heard),
    writtenTexts: () => writtenTexts(state.needs.disk, state.base.folder, state.byHand),
    snapshot: () => fileAway(state),
    look: () => lookAtFiles(state, 'all'),
    watch: () => watchFiles(state),
    retry: async () => {
      await state.base.writer.tryNow();
      return healthOf(state);
    },
    moveTo: (folder) => moveTo(state, folder),
    subscribe: (listener) => {
      state.listeners.add(listener);
      return () => state.listeners.delete(listener);
    },
    close: (options) => close(state, options?.abandon === true, options?.keep === true),
  };
}

async function close(state: State, abandon: boolean, keep: boolean): Promise<Done> {
  if (state.ended) return { ok: true };
  await state.base.writer.tryNow();
  const { unsafeEdits, reason = 'the disk does not answer', state: health } = healthOf(state);
  if (unsafeEdits > 0 && !abandon)
    return { ok: false, problem: `${unsafeEdits} edits are not saved: ${reason}` };
  // The journal holds everything: a file that can't be written now is written at the next opening.
  if (health !== 'read only') await fileAway(state);
  await state.base.writer.tryNow();
  const isLeft = keep && state.base.writer.state().pending.length > 0;
  const left = isLeft ? await keepWhatIsLeft(state, reason) : undefined;
  state.ended = true;
  state.cancelIdle?.();
  await state.base.writer.stop();
  await state.base.lock.release().catch(() => {});
  tell(state);
  return left ?? { ok: true };
}
