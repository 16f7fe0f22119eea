import { join } from 'node:path';
import { errorCode, type FileFacts, whyRefused } from '../files/disk.ts';
import { documentPath } from '../files/document-file.ts';
import { documentsOf, type WorkLine } from '../files/journal-line.ts';
import { type Lock, takeLock } from '../files/lock.ts';
import { HAND_WRITTEN } from '../files/project-folder.ts';
import { takeReplica } from '../files/replica.ts';
import { saveSnapshot } from '../files/snapshot.ts';
import { createDurably, ensureFolder } from '../files/write-durably.ts';
import { type Finding, ok, type Result } from '../finding/finding.ts';
import { documentKey } from '../record/document.ts';
import { makeBase } from './base.ts';
import { carryOver } from './carry-over.ts';
import type { Moved } from './contract.ts';
import { afterWriting } from './filing.ts';
import { makeRooms, newToken } from './opening.ts';
import { type Base, type State, tell } from './state.ts';

/**
 * Writes everything to another folder and goes on there: documents as they are in memory, what can't be read as it is, and
 * lines of the journal that no file holds. The old folder is left as it is; the new one is another copy of the project, with a
 * replica id of its own. Refused where the folder holds anything.
 */
export async function moveTo(state: State, folder: string): Promise<Moved> {
  const { disk } = state.needs;
  try {
    await ensureFolder(disk, folder);
    if ((await disk.list(folder)).length > 0) return { ok: false, problem: 'that folder is not empty' };
    const old = state.base;
    const furnished = await furnish(state, folder);
    if (!furnished.ok) return { ok: false, problem: furnished.findings[0]?.problem ?? 'it cannot be locked' };
    const { base, left } = furnished.value;
    state.base = base;
    handOver(old, base);
    await old.writer.stop();
    await old.lock.release().catch(() => {});
    state.findings = [...state.findings, ...left];
    tell(state);
    return { ok: true, left };
  } catch (error) {
    const code = errorCode(error);
    return {
      ok: false,
      problem: `it cannot be written there: ${code === undefined ? String(error) : whyRefused(error)}`,
    };
  }
}

/** Gives the new writer what the new files do not hold: lines that came, or got to the old disk, while they were written. */
function handOver(old: Base, base: Base): void {
  const { safe } = base.writer.state();
  const { pending } = old.writer.state();
  for (const line of old.writer.unfiled())
    if (line.seq > safe) base.writer.add({ line, told: () => {}, landed: () => {} });
  for (const { line, told, landed } of pending) {
    if (line.seq > safe) base.writer.add({ line, told, landed });
    else {
      landed();
      told(undefined);
    }
  }
}

/** A folder filled, to go on in, and what was not taken along. */
interface Furnished {
  readonly base: Base;
  readonly left: readonly Finding[];
}

/** Fills the new folder: every document, what else there is, a lock, a replica; project.json last, for it makes a folder a project. */
async function furnish(state: State, folder: string): Promise<Result<Furnished>> {
  const { disk, machine, random, person, now, after } = state.needs;
  await makeRooms(disk, folder);
  const lock = await takeLock(disk, folder, {
    token: newToken(random),
    owner: person,
    since: now(),
    machine,
    takeOver: false,
    pause: (ms) => new Promise((done) => after(ms, done)),
  });
  if (!lock.ok) return lock;
  try {
    return ok(await fill(state, folder, lock.value));
  } catch (error) {
    await lock.value.release().catch(() => {});
    throw error;
  }
}

async function fill(state: State, folder: string, lock: Lock): Promise<Furnished> {
  const { disk, machine, random } = state.needs;
  const { sequence } = state.base.writer.state();
  const facts = await writeDocuments(state, folder, sequence);
  const left = await carryOver(disk, state.base.folder, folder, writtenAnyway(state));
  const replica = await takeReplica(disk, folder, machine.host, random, newToken(random));
  const base = makeBase({
    needs: state.needs,
    folder,
    lock,
    replica,
    facts,
    spoiled: new Set(),
    shelf: state.shelf,
    closed: state.closed,
    letGo: state.letGo,
    lacking: state.lacking,
    start: { generation: 0, sequence, lines: linesOfClosed(state) },
    changed: () => afterWriting(state),
  });
  // Begun at once: it names every document, and holds the lines of those that can't be written.
  await base.writer.between(async () => {
    await base.writer.turnOver();
  });
  await writeHandWritten(state, folder);
  return { base, left };
}

function linesOfClosed(state: State): readonly WorkLine[] {
  return state.base.writer
    .unfiled()
    .filter((line) => documentsOf(line).some((name) => state.closed.has(documentKey(name))));
}

/** Files that are written from memory: documents that can be, and what was read of those written by hand. */
function writtenAnyway(state: State): ReadonlySet<string> {
  const byHand = (['project', 'logging'] as const).filter((which) => state.byHand[which] !== undefined);
  return new Set([
    ...openDocuments(state).map(([, { document }]) => documentPath(document)),
    ...byHand.map((which) => HAND_WRITTEN[which]),
  ]);
}

function openDocuments(state: State) {
  return state.shelf.keys().flatMap((key) => {
    const held = state.shelf.get(key);
    return held === undefined || state.closed.has(key) ? [] : [[key, held] as const];
  });
}

async function writeHandWritten(state: State, folder: string): Promise<void> {
  for (const which of ['logging', 'project'] as const) {
    const text = state.byHand[which]?.text;
    if (text === undefined) continue;
    await createDurably(state.needs.disk, join(folder, HAND_WRITTEN[which]), new TextEncoder().encode(text));
  }
}

/** Writes every document as it stood at a sequence of the journal; edits made meanwhile go to the new journal. */
async function writeDocuments(
  state: State,
  folder: string,
  sequence: number,
): Promise<Map<string, FileFacts>> {
  const { disk, random } = state.needs;
  const facts = new Map<string, FileFacts>();
  const inMemory = openDocuments(state);
  for (const [key, { document }] of inMemory) {
    await saveSnapshot(disk, folder, { document, position: { generation: 0, sequence } }, newToken(random));
    facts.set(key, await disk.facts(join(folder, documentPath(document))));
  }
  for (const [key, held] of inMemory) {
    const latest = state.shelf.get(key) ?? held;
    state.shelf.update(key, { ...latest, durable: held.document, snapshotSequence: sequence });
  }
  return facts;
}
