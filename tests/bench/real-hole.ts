import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { LinesAt } from '../../src/commands/lines/submit-made.ts';
import { takeLine } from '../../src/commands/lines/take-line.ts';
import { openDesk } from '../../src/desk/desk.ts';
import { loadProject } from '../../src/desk/load-project.ts';
import type { Change } from '../../src/record/document.ts';

const SAMPLE = join(import.meta.dirname, '../../sample-projects/mulgara-bend');
/** The hole of the benchmark. */
export const HOLE = { kind: 'hole', id: 'MBRC900' } as const;
const ROD_M = 6;
/** No hole goes deeper. */
const DEEPEST_M = 5000;

/** A project on the disk with one hole, and the way to take it away. */
export interface RealProject {
  readonly folder: string;
  readonly file: string;
  readonly remove: () => void;
}

/** A bag a metre, the controls among them, and metres to come: as many as are numbered for a hole. */
const bagsOf = (metres: number): number => Math.ceil(metres * 1.15) + 100;

/** The lines that log a hole a rod at a time, bags and all: a change in most rows, as a log has. */
export function linesOfHole(metres: number): readonly string[] {
  const lines = [`;numbered MB010001 MB0${10_000 + bagsOf(metres)}`, ';dry'];
  for (let fromM = 0; fromM < metres; fromM += ROD_M) {
    if (fromM + ROD_M <= DEEPEST_M) lines.push(';rod');
    for (let metre = fromM; metre < Math.min(metres, fromM + ROD_M); metre += 1) lines.push(lineAt(metre));
  }
  return lines;
}

function lineAt(metre: number): string {
  if (metre === 0) return 'bawx1ox1py1cl1';
  if (metre % 25 === 0) return metre % 50 === 0 ? 'ba' : 'do';
  const changes = [`py${1 + (metre % 3)}`, '.', `cl${1 + (metre % 2)}`, '.', `vn${1 + (metre % 4)}`];
  return changes[metre % 5] ?? '.';
}

/** A hole that is logged row by row and rod by rod, as a person logs it: an entry of its history for each. The clock is that of {@link atHole}. */
export async function realHole(metres: number, secondsApart = 1): Promise<RealProject> {
  const folder = mkdtempSync(join(tmpdir(), 'offsider-bench-'));
  for (const file of ['project.json', 'logging.json']) cpSync(join(SAMPLE, file), join(folder, file));
  const at = await atHole(folder, secondsApart);
  const made = at.desk.submit({
    what: 'a hole for the benchmark',
    parts: [{ document: HOLE, changes: newHole(metres, at.desk.newId(), at.desk.now()) }],
  });
  if (!made.ok) throw new Error(made.problem);
  for (const text of linesOfHole(metres)) await take(at, text);
  const closed = await at.desk.close();
  if (!closed.ok) throw new Error(closed.problem);
  return {
    folder,
    file: join(folder, 'holes', `${HOLE.id}.json`),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** Takes a line; durable when it resolves. Throws where it is refused. */
export async function take(at: LinesAt, text: string): Promise<void> {
  const taken = await takeLine(at, text);
  if (taken.kind === 'refused') throw new Error(`${text}: ${taken.problem}`);
}

/** A desk at the hole of a project, to take lines. Its clock goes on by so many seconds whenever it is read. */
export async function atHole(folder: string, secondsApart = 1): Promise<LinesAt> {
  let random = 1;
  let reads = 0;
  const opened = await openDesk({
    folder,
    person: 'NOK',
    clock: { nowMs: () => Date.UTC(2026, 2, 14) + reads++ * 1000 * secondsApart, offsetMin: () => 480 },
    random: (bytes) => Uint8Array.from({ length: bytes }, () => Math.imul(random++, 0x9e3779b1) >>> 24),
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  const desk = opened.value;
  const loaded = await loadProject({ folder, project: desk.project(), logging: desk.logging() });
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.findings));
  return { desk, project: loaded.value.project, hole: HOLE, noteMismatches: true };
}

function newHole(metres: number, id: string, startedAt: string): readonly Change[] {
  const header = {
    name: HOLE.id,
    state: 'drilling',
    logFromMm: 0,
    intervalMm: 1000,
    rodMm: ROD_M * 1000,
    firstRodOffsetMm: 0,
  };
  const depthMm = Math.min(5000, metres + 100) * 1000;
  return [
    { put: ['hole', 'hole'], thing: header },
    { put: ['plan', 'plan'], thing: { azimuthDeg: 270, azimuthNorth: 'grid', dipDeg: -60, depthMm } },
    { put: ['drilling', id], thing: { method: 'RC', rig: 'RC7', fromMm: 0, startedAt } },
  ];
}
