import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { openDesk } from '../../src/desk/desk.ts';
import { chainFault } from '../../src/record/chain.ts';
import { HOLE, seededRandom, tickingClock } from '../desk/support/values.ts';

/** The child's exit code where the project could not be opened. */
const REFUSED = 2;

const TOP = join(import.meta.dirname, '..', '..');

/** What a run of kills came to: kills, rows that had been shown as saved, and what was wrong on reopening. */
export interface Kills {
  readonly kills: number;
  readonly saved: number;
  /** Why the child was not let at the project, where it was not. */
  readonly refusals: readonly string[];
  readonly faults: readonly string[];
}

/**
 * Starts the writing child again and again on one project and kills it outright (SIGKILL) after a while that differs
 * each time; after each kill, opens the project in this process and looks for every row that the child had said is saved.
 * `under` is a command to run the child under, for each kill: a tracer that makes system calls fail.
 */
export async function killAgainAndAgain(
  kills: number,
  random: () => number,
  under: (kill: number) => readonly string[] = () => [],
): Promise<Kills> {
  const folder = mkdtempSync(join(tmpdir(), 'offsider-kill-'));
  const project = join(folder, 'project');
  const child = join(folder, 'child.mjs');
  await buildChild(child);
  try {
    makeProject(project);
    const faults: string[] = [];
    const refusals: string[] = [];
    let saved = 0;
    for (let kill = 0; kill < kills; kill += 1) {
      const said = await writeUntilKilled(
        [...under(kill), process.execPath, child, project, String(saved)],
        saved,
        1 + Math.floor(random() * 40),
      );
      refusals.push(...said.refusals);
      faults.push(...said.errors, ...(await lookFor(project, said.saved)));
      saved = said.saved;
    }
    return { kills, saved, refusals, faults };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export function makeProject(folder: string): void {
  mkdirSync(folder);
  writeFileSync(join(folder, 'project.json'), '{}\n');
}

export async function buildChild(outfile: string): Promise<void> {
  await build({
    entryPoints: [join(TOP, 'tests', 'faults', 'writing-child.ts')],
    bundle: true,
    platform: 'node',
    format: 'esm',
    mainFields: ['module', 'main'],
    outfile,
    logLevel: 'silent',
  });
}

/** What the child said before it ended. */
interface Told {
  readonly saved: number;
  readonly refusals: readonly string[];
  readonly errors: readonly string[];
}

/** Runs the child until it has saved so many rows more, then kills it; gives the number of rows it said are saved. */
function writeUntilKilled(
  [command = '', ...args]: readonly string[],
  start: number,
  rows: number,
): Promise<Told> {
  return new Promise((resolve) => {
    const running = spawn(command, args, { stdio: ['ignore', 'pipe', 'pipe'], detached: true });
    // The whole group: a tracer that is killed alone lets its child go on.
    const kill = (): void => {
      if (running.pid !== undefined && running.exitCode === null) process.kill(-running.pid, 'SIGKILL');
    };
    let out = '';
    let errors = '';
    running.stderr.on('data', (data) => {
      errors += String(data);
    });
    running.stdout.on('data', (data) => {
      out += String(data);
      if (out.split('\n').length > rows) kill();
    });
    running.on('close', (code) => {
      const last = out.split('\n').at(-2);
      const said = errors === '' ? [] : [errors.trim()];
      resolve({
        saved: last === undefined ? start : Number(last) + 1,
        refusals: code === REFUSED ? said : [],
        errors: code === REFUSED ? [] : said,
      });
    });
  });
}

export async function lookFor(folder: string, saved: number): Promise<readonly string[]> {
  const opened = await openDesk({
    folder,
    person: 'Ana Reyes',
    clock: tickingClock(),
    random: seededRandom(saved),
    readOnly: true,
  });
  if (!opened.ok) return opened.findings.map((finding) => finding.problem);
  const desk = opened.value;
  const hole = desk.get(HOLE);
  const depths = new Set(Object.values(hole?.tables.rows ?? {}).map((row) => row.fromMm));
  const faults = desk
    .findings()
    .filter((finding) => finding.severity === 'fault')
    .map((finding) => finding.problem);
  for (let metre = 0; metre < saved; metre += 1)
    if (!depths.has(metre * 1000)) faults.push(`row ${metre} is gone`);
  const fault = hole === undefined ? undefined : chainFault(hole.history);
  if (fault !== undefined) faults.push(fault.problem);
  return faults;
}
