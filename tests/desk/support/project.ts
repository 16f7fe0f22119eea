import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import { type Desk, type DeskOptions, openDesk } from '../../../src/desk/desk.ts';
import type { Saved } from '../../../src/desk/health.ts';
import type { Change, Document, DocumentName } from '../../../src/record/document.ts';
import { HOLE, holeMade, rowLogged, seededRandom, tickingClock } from './values.ts';

const made: string[] = [];
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A new folder on the real disk with an empty project in it; taken away after the test. */
export function newProject(): string {
  const folder = mkdtempSync(join(tmpdir(), 'offsider-'));
  made.push(folder);
  writeFileSync(join(folder, 'project.json'), '{}\n');
  return folder;
}

/** The settings of a desk in tests; anything can be set otherwise. */
export function deskOptions(folder: string, more: Partial<DeskOptions> = {}): DeskOptions {
  return { folder, person: 'Ana Reyes', clock: tickingClock(), random: seededRandom(7), ...more };
}

/** Opens a desk that must open. */
export async function opened(folder: string, more: Partial<DeskOptions> = {}): Promise<Desk> {
  const result = await openDesk(deskOptions(folder, more));
  if (!result.ok) throw new Error(JSON.stringify(result.findings));
  return result.value;
}

/** Submits changes to one document; they must be taken. Resolves when they are on the medium, or could not be put there. */
export async function done(
  desk: Desk,
  document: DocumentName,
  changes: readonly Change[],
  what = 'done',
): Promise<Saved> {
  const submitted = desk.submit({ what, parts: [{ document, changes }] });
  if (!submitted.ok) throw new Error(submitted.problem);
  return submitted.durable;
}

/** A project with one hole of so many metres logged, closed; with the hole as it stood. */
export async function projectWithHole(
  metres = 3,
): Promise<{ readonly folder: string; readonly hole: Document }> {
  const folder = newProject();
  const desk = await opened(folder);
  await done(desk, HOLE, holeMade(), 'hole made');
  for (let metre = 0; metre < metres; metre += 1)
    await done(desk, HOLE, [rowLogged(desk.newId(), metre)], `${metre} logged`);
  await desk.close();
  const hole = desk.get(HOLE);
  if (hole === undefined) throw new Error('the hole was just made');
  return { folder, hole };
}
