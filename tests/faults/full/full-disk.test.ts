import { execFileSync, spawnSync } from 'node:child_process';
import {
  closeSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { SAMPLE } from '../../commands/support/outside.ts';
import { offsiderBundle } from '../../e2e/support/program.ts';
import { openPty, type Pty } from '../../e2e/support/pty.ts';

const TRIES = 18;

/** Takes every byte of a disk that is left. */
function fill(disk: string): void {
  const file = openSync(join(disk, 'fill'), 'w');
  try {
    for (const size of [65_536, 4096, 1]) {
      try {
        for (;;) writeSync(file, new Uint8Array(size));
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code !== 'ENOSPC') throw error;
      }
    }
  } finally {
    closeSync(file);
  }
}

/** What the geologist has open, or has just done, when the terminal is closed. */
const MOMENTS: readonly (readonly [what: string, keys: readonly string[]])[] = [
  ['on the log', []],
  ['in the question of ;q', [';q\r']],
  ['in the question of ;elsewhere', [';elsewhere\r']],
  ['after both were left with Esc', ['\x03', '\x1b', ';q\r', '\x1b', ';elsewhere\r', '\x1b']],
  ['with a rod being recorded', ['\x1bOQ']],
  ['moving to a folder that is as full', [';elsewhere FULL/other\r']],
];

/** Logs into a disk that is full to the last byte and closes the terminal at such a moment; gives how many rows stood as not saved, and the depth logged to, in metres. */
async function closedOnFullDisk(
  program: string,
  at: { readonly disk: string; readonly project: string; readonly home: string },
  keys: readonly string[],
): Promise<{ readonly unsaved: number; readonly toM: number }> {
  const shell = openPty({
    command: '/bin/sh',
    args: ['-i'],
    env: { PS1: 'shell> ', ENV: undefined, HOME: at.home },
  });
  try {
    await shell.waitForText('shell>');
    shell.type(`"${process.execPath}" "${program}" "${at.project}"\r`);
    await shell.waitForText('MBRC003');
    await logAll(shell, ['', 'p3']);
    await shell.waitFor(([header = '']) => header.includes('saved '), 'the first row saved');
    fill(at.disk);
    await logAll(shell, ['p1', 'p2', 'p3', '.', '.', '.', '.']);
    await shell.waitFor(([header = '']) => /NOT SAVED: \d/.test(header), 'NOT SAVED');
    const toM = Number(/(\d+)–\d+ ▸/.exec(shell.screen().join('\n'))?.[1] ?? Number.NaN);
    for (const each of keys) {
      shell.type(each.replace('FULL', at.disk));
      await pause(120);
    }
    const unsaved = Number(/NOT SAVED: (\d+)/.exec(shell.screen().join('\n'))?.[1] ?? Number.NaN);
    return { unsaved, toM };
  } finally {
    shell.hangUp();
    await shell.exited;
  }
}

async function logAll(pty: Pty, lines: readonly string[]): Promise<void> {
  for (const line of lines) {
    pty.type(line);
    pty.type('\r');
    await pause(150);
  }
}

/** Waits until the console that had the project is gone, by its lock. */
async function untilGone(project: string): Promise<void> {
  for (let tries = 0; existsSync(join(project, 'journal/lock.json')) && tries < 100; tries += 1)
    await pause(50);
}

/**
 * A real disk filled to its last byte under the console, the terminal closed at any moment, a start on the disk that is still full, and one
 * when space is there. Needs the right to mount, and fails where it is not there.
 */
it('a full disk under the console, its terminal closed at any moment, loses no row and leaves none unsaid', {
  timeout: 900_000,
}, async () => {
  const program = await offsiderBundle();
  const place = mkdtempSync(join(tmpdir(), 'offsider-full-'));
  const at = { disk: join(place, 'disk'), project: join(place, 'disk/project'), home: join(place, 'home') };
  mkdirSync(at.disk);
  const faults: string[] = [];
  let kept = 0;
  const run = (args: readonly string[], input = '') =>
    spawnSync(process.execPath, [program, ...args, '--project', at.project], {
      encoding: 'utf8',
      input,
      env: { ...process.env, HOME: at.home },
    });
  for (let attempt = 0; attempt < TRIES; attempt += 1) {
    const [what = '', keys = []] = MOMENTS[attempt % MOMENTS.length] ?? [];
    mkdirSync(at.home);
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=2m', 'tmpfs', at.disk]);
    try {
      cpSync(SAMPLE, at.project, { recursive: true });
      const { unsaved, toM } = await closedOnFullDisk(program, at, keys);
      await untilGone(at.project);
      const fault = (problem: string) =>
        faults.push(`try ${attempt}, ${what}, ${unsaved} unsaved: ${problem}`);
      const waiting = existsSync(join(at.home, '.offsider')) ? readdirSync(join(at.home, '.offsider')) : [];
      if (waiting.length !== 1) fault(`${waiting.length} files of kept rows`);
      const onFull = run(['enter', 'MBRC003'], 'nr\n');
      if (onFull.status !== 2 || !onFull.stderr.includes('the disk is full'))
        fault(`a start on the full disk gave ${onFull.status}: ${onFull.stdout}${onFull.stderr}`);
      rmSync(join(at.disk, 'fill'));
      const listed = run(['holes']);
      if (!listed.stderr.includes('not in the log yet')) fault(`holes does not say them: ${listed.stderr}`);
      const entered = run(['enter', 'MBRC003'], 'nr\n');
      if (!entered.stderr.includes('in the log now')) fault(`not said to be put in: ${entered.stderr}`);
      const { tables } = JSON.parse(readFileSync(join(at.project, 'holes/MBRC003.json'), 'utf8'));
      const depths = new Set(
        Object.values<{ fromMm: number }>(tables.rows).map(({ fromMm }) => fromMm / 1000),
      );
      // Those on the screen, and the one logged since.
      const lost = Array.from({ length: toM + 1 }, (_, metre) => metre).filter((metre) => !depths.has(metre));
      if (lost.length > 0 || !(toM > 48)) fault(`rows lost ${lost.join()} of ${toM}`);
      kept += unsaved;
    } finally {
      execFileSync('umount', [at.disk]);
      rmSync(at.home, { recursive: true, force: true });
    }
  }
  rmSync(place, { recursive: true, force: true });
  console.log(
    `${TRIES} consoles closed on a full disk, ${kept} rows not saved then, ${faults.length} faults`,
  );
  expect(faults).toEqual([]);
  expect(kept).toBeGreaterThan(TRIES);
});
