import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import { type Desk, type DeskOptions, openDesk } from '../../../src/desk/desk.ts';
import { seededRandom, tickingClock } from './values.ts';

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
