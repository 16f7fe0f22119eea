import { type Desk, type DeskOptions, openDesk, type Submitted } from '../../src/desk/desk.ts';
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

/** What was shown as saved: an edit in its documents, or project.json written anew (by its number among the attempts). */
type Saved =
  | { readonly edit: Id; readonly documents: readonly DocumentName[] }
  | { readonly attempt: number };

/** What a person at the rig saw: what was shown as saved, the desks that were open, the texts tried for project.json. */
export interface Seen {
  readonly saved: Saved[];
  readonly desks: Desk[];
  readonly attempts: string[];
}

/** What is seen before anything is done. */
export const nothingSeen = (): Seen => ({ saved: [], desks: [], attempts: [EMPTY_PROJECT] });
const EMPTY_PROJECT = '{}\n';

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

/** Desk settings for a disk in memory; every earlier console counts as gone. */
export function faultOptions(disk: Disk, seed: number): DeskOptions {
  return {
    folder: FOLDER,
    person: 'Ana Reyes',
    clock: tickingClock(),
    random: seededRandom(seed),
    disk,
    machine: { host: 'rig-laptop', process: seed, boot: 'first', isRunning: () => false },
    after: impatient,
    idleMs: IDLE_MS,
  };
}

/**
 * A sitting at the rig: two holes and a shift made, rows logged in bursts, an amendment, an edit over two documents,
 * undo and redo, a copy taken in, project.json written twice, files written twice, more rows, closing. Where opening is refused it is tried once more.
 */
export async function logSitting(disk: Disk, seen: Seen): Promise<void> {
  const desk = await openTwice(disk, 11 + seen.saved.length * 10);
  if (desk === undefined) return;
  seen.desks.push(desk);
  const waiting: Promise<void>[] = [];
  const note = (submitted: Submitted): void => {
    if (!submitted.ok) return;
    const documents = submitted.edit.parts.map((part) => part.document);
    waiting.push(
      submitted.durable.then((saved) => {
        if (saved.ok) seen.saved.push({ edit: submitted.edit.edit, documents });
      }),
    );
  };
  const say = (what: string, ...parts: readonly (readonly [DocumentName, readonly Change[]])[]): void =>
    note(desk.submit({ what, parts: parts.map(([document, changes]) => ({ document, changes })) }));
  const writeProject = (): void => {
    const attempt = seen.attempts.length;
    const text = `{ "attempt": ${attempt} }\n`;
    seen.attempts.push(text);
    waiting.push(
      desk.writeByHand('project', text).then((written) => {
        if (written.ok) seen.saved.push({ attempt });
      }),
    );
  };
  const takeIn = (): void => {
    const taken = desk.receive(ARRIVED);
    if (!taken.ok) return;
    waiting.push(
      taken.durable.then((saved) => {
        if (saved.ok) seen.saved.push({ edit: 'camp99-1', documents: [{ kind: 'hole', id: 'ZQRC009' }] });
      }),
    );
  };
  const pause = async (): Promise<void> => {
    await Promise.all(waiting.splice(0));
  };

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
  note(desk.redo(HOLE));
  writeProject();
  await pause();
  takeIn();
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
  const closed = await desk.close();
  if (!closed.ok) await desk.close();
}

async function openTwice(disk: Disk, first: number): Promise<Desk | undefined> {
  for (const seed of [first, first + 1]) {
    const opened = await openDesk(faultOptions(disk, seed));
    if (opened.ok) return opened.value;
  }
  return undefined;
}
