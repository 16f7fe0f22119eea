import { cpSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Outside } from '../desk/outside.ts';
import { DOCUMENT_KINDS } from '../files/document-file.ts';
import { instantMs, offsetMin, parseStamp, type Stamp } from '../quantity/stamp.ts';

/** The sample project that is opened as the demo. */
const SAMPLE = 'mulgara-bend';

/** Copies the sample project to a fresh folder outside of this one, and gives that folder: nothing that came with the program changes. */
export function demoFolder(): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'offsider-demo-')), SAMPLE);
  cpSync(sampleFolder(), folder, { recursive: true });
  return folder;
}

/** The world with a clock that goes on from a minute after the last thing in the sample was recorded, so that its day goes on as it was left. */
export function demoOutside(outside: Outside, folder: string): Outside {
  const last = lastRecorded(folder);
  if (last === undefined) return outside;
  const started = outside.clock.nowMs();
  const clock = {
    nowMs: () => instantMs(last) + 60_000 + outside.clock.nowMs() - started,
    offsetMin: () => offsetMin(last),
  };
  return { ...outside, clock };
}

function lastRecorded(folder: string): Stamp | undefined {
  const files = Object.values(DOCUMENT_KINDS).flatMap(({ folder: room }) =>
    names(join(folder, room)).map((name) => join(folder, room, name)),
  );
  return files
    .flatMap((file) => [...readFileSync(file, 'utf8').matchAll(/"at": ?"([^"]+)"/g)])
    .flatMap(([, text]) => parseStamp(text ?? '') ?? [])
    .sort((a, b) => instantMs(a) - instantMs(b))
    .at(-1);
}

/** The sample projects stand beside the folder of the bundle; run from source they stand above it. */
function sampleFolder(): string {
  for (const way of ['../sample-projects/', '../../sample-projects/']) {
    const folder = join(import.meta.dirname, way);
    if (names(folder).includes(SAMPLE)) return join(folder, SAMPLE);
  }
  throw new Error('the sample projects are not beside the program: install it again');
}

function names(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}
