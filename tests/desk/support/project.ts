import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import { type Desk, type DeskOptions, openDesk } from '../../../src/desk/desk.ts';
import type { Change, DocumentName, Id } from '../../../src/record/document.ts';

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

/** Bytes that look random and come the same for the same seed. */
export function seededRandom(seed: number): (bytes: number) => Uint8Array {
  let state = seed >>> 0;
  return (bytes) =>
    Uint8Array.from({ length: bytes }, () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state >>> 24;
    });
}

/** A clock that starts on a day in March and moves on a second at each look. */
export function tickingClock(): DeskOptions['clock'] {
  let now = Date.UTC(2026, 2, 14, 0, 0, 0);
  return {
    nowMs: () => {
      now += 1000;
      return now;
    },
    offsetMin: () => 480,
  };
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

export const HOLE: DocumentName = { kind: 'hole', id: 'ZQRC001' };

/** The changes that make a hole. */
export function holeMade(name = 'ZQRC001'): readonly Change[] {
  return [
    {
      put: ['hole', 'hole'],
      thing: {
        name,
        state: 'drilling',
        logFromMm: 0,
        intervalMm: 1000,
        rodMm: 6000,
        firstRodOffsetMm: 0,
      },
    },
  ];
}

/** The change that logs one metre from a depth. */
export function rowLogged(id: Id, fromM: number, percent = 2): Change {
  return {
    put: ['rows', id],
    thing: { fromMm: fromM * 1000, toMm: fromM * 1000 + 1000, cells: { pyrite: { percent } } },
  };
}
