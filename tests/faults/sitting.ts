import { join } from 'node:path';
import type { Done } from '../../src/desk/contract.ts';
import { type Desk, type DeskOptions, openDesk, type Submitted } from '../../src/desk/desk.ts';
import type { Saved as SavedOrNot } from '../../src/desk/health.ts';
import type { Disk } from '../../src/files/disk.ts';
import { apply } from '../../src/record/apply.ts';
import {
  type Change,
  type Document,
  type DocumentName,
  emptyDocument,
  type Id,
} from '../../src/record/document.ts';
import { HOLE, holeMade, rowLogged, seededRandom, tickingClock } from '../desk/support/values.ts';
import { type Medium, newMedium, syncFile, syncNames } from './medium.ts';
import { recordingDisk } from './recording-disk.ts';

export const FOLDER = '/project';
const OTHER_HOLE: DocumentName = { kind: 'hole', id: 'ZQRC002' };
const SHIFT: DocumentName = { kind: 'shift', id: 'RIG3_2026-03-14_DAY' };

/** What was shown as saved: an edit in its documents, or project.json written again (by its number among the attempts). */
type Saved =
  | { readonly edit: Id; readonly documents: readonly DocumentName[] }
  | { readonly attempt: number };

/** What a person at the rig saw: what was shown as saved, the desks that were open, the texts tried for project.json, and what was amiss. */
export interface Seen {
  readonly saved: Saved[];
  readonly desks: Desk[];
  readonly attempts: string[];
  /** Files that were said to be written, with their bytes. */
  readonly written: { readonly path: string; readonly bytes: Uint8Array }[];
  /** Times at which something was not saved and no one was told so, or was told nothing of why. */
  readonly unsaid: string[];
  /** False until a project was said to be made: before that there may be none. */
  made: boolean;
}

/** What is seen before anything is done. */
export const nothingSeen = (): Seen => ({
  saved: [],
  desks: [],
  attempts: [EMPTY_PROJECT],
  written: [],
  unsaid: [],
  made: true,
});
export const EMPTY_PROJECT = '{}\n';

/** A hole that another console logged: what is taken in here. */
const ARRIVED: Document = arrived();
function arrived(): Document {
  const name = { kind: 'hole', id: 'ZQRC009' };
  const deed = { edit: 'camp99-1', at: '2026-03-13T08:00:00+08:00', by: 'Kei Larsen', what: 'hole made' };
  const made = apply(emptyDocument(name), deed, holeMade('ZQRC009'));
  if (!made.ok) throw new Error(made.problem);
  return made.document;
}

/** A medium with an empty project on it. */
export async function freshProject(): Promise<Medium> {
  const medium = newMedium();
  const disk = recordingDisk(medium);
  await disk.makeFolder(FOLDER);
  const file = await disk.create(`${FOLDER}/project.json`);
  await file.write(new TextEncoder().encode(EMPTY_PROJECT));
  await file.sync();
  await disk.syncFolder(FOLDER);
  await disk.syncFolder('/');
  for (const node of medium.nodes.values()) {
    syncFile(node);
    syncNames(node);
  }
  return medium;
}

/** Retries come at the next turn; pauses that a person would have to make never end by themselves. */
export function impatient(ms: number, run: () => void): () => void {
  if (ms >= IDLE_MS) return () => {};
  const turn = setImmediate(run);
  return () => clearImmediate(turn);
}
const IDLE_MS = 1_000_000;

/** The project's folder as a disk names it: one that behaves as Windows does has its own names. */
export function projectOn(disk: Disk): string {
  return 'project' in disk && typeof disk.project === 'string' ? disk.project : FOLDER;
}

/** Desk settings for a disk in memory; every earlier console counts as gone. */
export function faultOptions(disk: Disk, seed: number): DeskOptions {
  return {
    folder: projectOn(disk),
    person: 'Ana Reyes',
    clock: tickingClock(),
    random: seededRandom(seed),
    disk,
    machine: { host: 'rig-laptop', process: seed, boot: 'first', isRunning: () => false },
    after: impatient,
    idleMs: IDLE_MS,
  };
}

/** A desk with a person at it, who notes what is shown as saved and what is not said. */
export interface Sitting {
  readonly desk: Desk;
  readonly note: (submitted: Submitted) => void;
  readonly say: (what: string, ...parts: readonly (readonly [DocumentName, readonly Change[]])[]) => void;
  readonly writeProject: () => void;
  readonly takeIn: (copy: Document, edit: Id) => void;
  readonly writeOut: (file: string, bytes: Uint8Array) => void;
  /** Waits until everything so far is saved, or said not to be. */
  readonly pause: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** Opens the project, a second time where it is refused once; undefined where it stays refused. */
export async function sitDown(disk: Disk, seen: Seen): Promise<Sitting | undefined> {
  const desk = await openTwice(disk, 11 + seen.saved.length * 10, seen);
  if (desk === undefined) return undefined;
  seen.desks.push(desk);
  const waiting: Promise<void>[] = [];
  let unsaved = 0;
  const wait = (what: string, done: Promise<Done | SavedOrNot>, saved: () => void): void => {
    waiting.push(
      done.then((result) => {
        if (result.ok) return saved();
        unsaved += 1;
        if (result.problem.trim() === '') seen.unsaid.push(`${what}: not saved, no word why`);
      }),
    );
  };
  const note = (submitted: Submitted): void => {
    if (!submitted.ok) {
      if (submitted.problem.trim() === '') seen.unsaid.push('refused, no word why');
      return;
    }
    const { edit } = submitted;
    const documents = edit.parts.map((part) => part.document);
    wait(edit.what, submitted.durable, () => seen.saved.push({ edit: edit.edit, documents }));
  };
  return {
    desk,
    note,
    say: (what, ...parts) =>
      note(desk.submit({ what, parts: parts.map(([document, changes]) => ({ document, changes })) })),
    writeProject: () => {
      const attempt = seen.attempts.length;
      const text = `{ "attempt": ${attempt} }\n`;
      seen.attempts.push(text);
      const written = desk
        .writeByHand('project', text)
        .then((done) => (done.ok ? done : { ok: false as const, problem: done.findings[0]?.problem ?? '' }));
      wait('project.json', written as Promise<Done>, () => seen.saved.push({ attempt }));
    },
    takeIn: (copy, edit) => {
      const taken = desk.receive(copy);
      if (!taken.ok) return;
      const documents = [{ kind: copy.kind, id: copy.id }];
      wait(`copy ${edit}`, taken.durable, () => seen.saved.push({ edit, documents }));
    },
    writeOut: (file, bytes) =>
      wait(file, desk.writeOut(file, bytes), () =>
        seen.written.push({ path: join(desk.folder(), file), bytes }),
      ),
    pause: async () => {
      await Promise.all(waiting.splice(0));
      const { state, reason = '' } = desk.health();
      if (unsaved > 0 && state !== 'safe' && reason.trim() === '') seen.unsaid.push(`${state}, no word why`);
      unsaved = 0;
    },
    close: async () => {
      const before = desk.health();
      const closed = await desk.close();
      if (closed.ok) return;
      if (closed.problem.trim() === '') seen.unsaid.push('not closed, no word why');
      const again = await desk.close();
      if (!again.ok && again.problem.trim() === '') seen.unsaid.push('not closed again, no word why');
      if (again.ok && before.unsafeEdits > 0 && desk.health().unsafeEdits > 0)
        seen.unsaid.push('closed over rows that are not saved');
    },
  };
}

/**
 * A sitting at the rig: two holes and a shift made, rows logged in bursts, an amendment, an edit over two documents,
 * undo and redo, a copy taken in, project.json written twice, files written twice, more rows, closing. Where opening is refused it is tried once more.
 */
export async function logSitting(disk: Disk, seen: Seen): Promise<void> {
  const sitting = await sitDown(disk, seen);
  if (sitting === undefined) return;
  const { desk, note, say, writeProject, takeIn, pause } = sitting;

  say('hole made', [HOLE, holeMade()]);
  await pause();
  say(
    'hole and shift made',
    [OTHER_HOLE, holeMade('ZQRC002')],
    [SHIFT, [{ put: ['activities', desk.newId()], thing: { what: 'drilling' } }]],
  );
  const rows: Id[] = [];
  const log = (metre: number): void => {
    const id = desk.newId();
    rows.push(id);
    say(`${metre}–${metre + 1} logged`, [HOLE, [rowLogged(id, metre)]]);
  };
  log(0);
  await pause();
  for (const metre of [1, 2, 3]) log(metre);
  await pause();
  await desk.snapshot();
  say('1–2 amended', [HOLE, [{ patch: ['rows', rows[1] ?? ''], set: { remark: 'looked again' } }]]);
  await pause();
  note(desk.undo(HOLE));
  note(desk.redo());
  writeProject();
  await pause();
  takeIn(ARRIVED, 'camp99-1');
  await pause();
  log(4);
  await pause();
  say('row in each', [HOLE, [rowLogged(desk.newId(), 5)]], [OTHER_HOLE, [rowLogged(desk.newId(), 0)]]);
  void desk.snapshot();
  log(6);
  log(7);
  await pause();
  writeProject();
  await pause();
  say('row taken out', [HOLE, [{ remove: ['rows', rows[0] ?? ''] }]]);
  await pause();
  await sitting.close();
}

async function openTwice(disk: Disk, first: number, seen: Seen): Promise<Desk | undefined> {
  for (const seed of [first, first + 1]) {
    const opened = await openDesk(faultOptions(disk, seed));
    if (opened.ok) return opened.value;
    if (opened.findings.every(({ problem }) => problem.trim() === ''))
      seen.unsaid.push('not opened, no word why');
  }
  return undefined;
}
