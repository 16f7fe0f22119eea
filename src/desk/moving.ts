import { join } from 'node:path';
import { errorCode, type FileFacts, whyRefused } from '../files/disk.ts';
import { documentPath } from '../files/document-file.ts';
import { takeLock } from '../files/lock.ts';
import { HAND_WRITTEN } from '../files/project-folder.ts';
import { takeReplica } from '../files/replica.ts';
import { saveSnapshot } from '../files/snapshot.ts';
import { createDurably, ensureFolder } from '../files/write-durably.ts';
import { makeBase } from './base.ts';
import type { Done } from './contract.ts';
import { afterWriting } from './filing.ts';
import { makeRooms, newToken } from './opening.ts';
import { type Base, type State, tell } from './state.ts';

/**
 * Writes everything that is in memory to another folder and goes on there. The old folder is left as it is; the new one
 * is another copy of the project, with a replica id of its own. Refused where the folder holds anything.
 */
export async function moveTo(state: State, folder: string): Promise<Done> {
  const { disk } = state.needs;
  try {
    await ensureFolder(disk, folder);
    if ((await disk.list(folder)).length > 0) return { ok: false, problem: 'that folder is not empty' };
    const old = state.base;
    const base = await furnish(state, folder);
    if (base === undefined) return { ok: false, problem: 'another console uses that folder' };
    state.base = base;
    for (const { line, told, landed } of old.writer.state().pending) {
      if (line.seq > base.writer.state().safe) base.writer.add({ line, told, landed });
      else {
        landed();
        told(undefined);
      }
    }
    await old.writer.stop();
    await old.lock.release().catch(() => {});
    tell(state);
    return { ok: true };
  } catch (error) {
    const code = errorCode(error);
    return {
      ok: false,
      problem: `it cannot be written there: ${code === undefined ? String(error) : whyRefused(error)}`,
    };
  }
}

/** Fills the new folder: hand-written files, every document as it stands in memory, a lock, a replica. */
async function furnish(state: State, folder: string): Promise<Base | undefined> {
  const { disk, machine, random, person, now, after } = state.needs;
  const { sequence } = state.base.writer.state();
  await makeRooms(disk, folder);
  const lock = await takeLock(disk, folder, {
    token: newToken(random),
    owner: person,
    since: now(),
    machine,
    takeOver: false,
    pause: (ms) => new Promise((done) => after(ms, done)),
  });
  if (!lock.ok) return undefined;
  await writeHandWritten(state, folder);
  const facts = await writeDocuments(state, folder, sequence);
  const replica = await takeReplica(disk, folder, machine.host, random, newToken(random));
  return makeBase({
    needs: state.needs,
    folder,
    lock: lock.value,
    replica,
    facts,
    spoiled: new Set(),
    shelf: state.shelf,
    closed: state.closed,
    start: { generation: 0, sequence, lines: [] },
    changed: () => afterWriting(state),
  });
}

async function writeHandWritten(state: State, folder: string): Promise<void> {
  for (const which of ['project', 'logging'] as const) {
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
  const inMemory = state.shelf.keys().flatMap((key) => {
    const held = state.shelf.get(key);
    return held === undefined ? [] : [[key, held] as const];
  });
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
