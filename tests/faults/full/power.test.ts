import { execFileSync, spawn } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { buildChild, lookFor, makeProject } from '../killing.ts';
import { seededNumbers } from '../runs.ts';

const CUTS = 60;
const SEED = Number(process.env.OFFSIDER_SEED ?? 20260314);

const mount = (image: string, at: string): void => {
  execFileSync('mount', ['-o', 'loop', image, at]);
};
const unmount = (at: string): void => {
  execFileSync('umount', [at]);
};

/**
 * Power cuts of a real file system: the program writes onto an ext4 image that is mounted, the image is copied while it is mounted and the
 * program stands still, and the copy is mounted as a laptop would after the cut. Needs the right to mount, and fails where it is not there.
 */
it('sixty power cuts of an ext4 image that is being written lose no row that was said to be saved', {
  timeout: 900_000,
}, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'offsider-power-'));
  const [image, copy, live, after] = ['live.img', 'copy.img', 'live', 'after'].map((name) =>
    join(folder, name),
  ) as [string, string, string, string];
  const random = seededNumbers(SEED);
  for (const each of [live, after]) mkdirSync(each);
  execFileSync('truncate', ['-s', '24M', image]);
  execFileSync('mkfs.ext4', ['-q', image]);
  const program = join(folder, 'child.mjs');
  await buildChild(program);
  mount(image, live);
  const faults: string[] = [];
  let rows = 0;
  try {
    makeProject(join(live, 'project'));
    execFileSync('sync', ['-f', live]);
    const running = spawn(process.execPath, [program, join(live, 'project'), '0'], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    let said = '';
    running.stdout.on('data', (data) => {
      said += String(data);
    });
    try {
      for (let cut = 0; cut < CUTS && running.exitCode === null; cut += 1) {
        await pause(20 + Math.floor(random() * 200));
        running.kill('SIGSTOP');
        // What it had written to its output by then comes in before the copy is looked at; only that was shown to anybody.
        await pause(20);
        const saved = said.split('\n').length - 1;
        copyFileSync(image, copy);
        running.kill('SIGCONT');
        mount(copy, after);
        try {
          faults.push(
            ...(await lookFor(join(after, 'project'), saved)).map(
              (each) => `cut ${cut}, ${saved} rows: ${each}`,
            ),
          );
        } finally {
          unmount(after);
        }
        rows = saved;
      }
      expect(running.exitCode).toBeNull();
    } finally {
      const ended = new Promise((done) => running.on('close', done));
      running.kill('SIGKILL');
      await ended;
    }
  } finally {
    unmount(live);
    rmSync(folder, { recursive: true, force: true });
  }
  console.log(
    `${CUTS} power cuts of a mounted image, ${rows} rows said to be saved at the last, ${faults.length} faults`,
  );
  expect(faults).toEqual([]);
  expect(rows).toBeGreaterThan(CUTS);
});
