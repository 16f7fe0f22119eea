import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openDesk } from '../../src/desk/desk.ts';
import type { Change, Thing } from '../../src/record/document.ts';

const SAMPLE = join(import.meta.dirname, '../../sample-projects/mulgara-bend');
const ROCKS = ['BAS', 'DOL', 'GAB'];

/** A project of one hole that is drilled and logged to a depth, with the sample's settings and codes, in a new folder; and the way to take it away. */
export async function projectOfMetres(
  metres: number,
): Promise<{ readonly folder: string; readonly remove: () => void }> {
  const folder = mkdtempSync(join(tmpdir(), 'offsider-bench-'));
  for (const file of ['project.json', 'logging.json']) cpSync(join(SAMPLE, file), join(folder, file));
  let random = 1;
  const opened = await openDesk({
    folder,
    person: 'NOK',
    clock: { nowMs: () => Date.UTC(2026, 2, 14), offsetMin: () => 480 },
    random: (bytes) => Uint8Array.from({ length: bytes }, () => Math.imul(random++, 0x9e3779b1) >>> 24),
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  const desk = opened.value;
  const done = desk.submit({
    what: 'a hole for the benchmark',
    parts: [{ document: { kind: 'hole', id: 'MBRC900' }, changes: holeOf(metres, desk.newId, desk.now()) }],
  });
  if (!done.ok) throw new Error(done.problem);
  await desk.close();
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

function holeOf(metres: number, newId: () => string, at: string): readonly Change[] {
  const header: Thing = {
    name: 'MBRC900',
    state: 'drilling',
    logFromMm: 0,
    intervalMm: 1000,
    rodMm: 6000,
    firstRodOffsetMm: 0,
  };
  const plan: Thing = { azimuthDeg: 270, azimuthNorth: 'grid', dipDeg: -60, depthMm: (metres + 100) * 1000 };
  const rows = Array.from(
    { length: metres },
    (_, metre): Change => ({ put: ['rows', newId()], thing: rowAt(metre) }),
  );
  const rods = Array.from(
    { length: Math.floor(metres / 6) },
    (_, rod): Change => ({ put: ['rods', newId()], thing: { at, rod: rod + 1, depthMm: (rod + 1) * 6000 } }),
  );
  return [{ put: ['hole', 'hole'], thing: header }, { put: ['plan', 'plan'], thing: plan }, ...rods, ...rows];
}

/** A row that differs a little from the one above, as a log does. */
function rowAt(metre: number): Thing {
  return {
    fromMm: metre * 1000,
    toMm: (metre + 1) * 1000,
    cells: {
      rock: { code: ROCKS[Math.floor(metre / 25) % 3] ?? 'BAS' },
      weathering: { level: 1 },
      oxidation: { level: 1 },
      alteration: { levels: { CHL: 1 + (Math.floor(metre / 3) % 3) } },
      sulphides: metre % 20 > 15 ? { percents: { PYR: 1 + (metre % 3) } } : { absent: 'none' },
    },
  };
}
