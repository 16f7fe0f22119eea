import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { check } from '../../src/commands/check.ts';
import { enter } from '../../src/commands/enter.ts';
import { holes } from '../../src/commands/holes.ts';
import { bytesFrom } from '../../src/commands/outside.ts';
import { pack } from '../../src/commands/pack.ts';
import { openDesk } from '../../src/desk/desk.ts';
import type { Disk, OpenFile } from '../../src/files/disk.ts';
import { realDisk } from '../../src/files/real-disk.ts';
import { rowLogged } from '../desk/support/values.ts';
import { copyOfSample, freshFolder, hear } from './support/outside.ts';

const HOLE = { kind: 'hole', id: 'MBRC003' } as const;

/** The disk of this machine, on which nothing more goes into files of the project once it is full. */
function fillingDisk(project: string): { readonly disk: Disk; readonly fill: () => void } {
  let isFull = false;
  const guarded = (file: OpenFile, path: string): OpenFile => ({
    write: async (bytes) => {
      if (isFull && path.startsWith(project))
        throw Object.assign(new Error('no space left'), { code: 'ENOSPC' });
      return file.write(bytes);
    },
    sync: () => file.sync(),
    close: () => file.close(),
  });
  const disk = { ...realDisk, create: async (path: string) => guarded(await realDisk.create(path), path) };
  return { disk, fill: () => (isFull = true) };
}

/** A project of which a console closed with one row that the disk had not taken, and the folder where that row waits. */
async function closedFull(): Promise<{ readonly folder: string; readonly home: string }> {
  const folder = copyOfSample();
  const home = freshFolder();
  const { disk, fill } = fillingDisk(folder);
  const { clock } = hear().outside;
  const opened = await openDesk({
    folder,
    person: 'NOK',
    clock,
    random: bytesFrom('a console'),
    disk,
    unsavedFolder: join(home, '.offsider'),
  });
  if (!opened.ok) throw new Error(opened.findings.map(({ problem }) => problem).join());
  fill();
  const desk = opened.value;
  const logged = desk.submit({
    what: 'logged 46–47',
    parts: [{ document: HOLE, changes: [rowLogged(desk.newId(), 46)] }],
  });
  if (!logged.ok) throw new Error(logged.problem);
  const closed = await desk.close({ abandon: true, keep: true });
  if (closed.ok) throw new Error('the disk was full');
  return { folder, home };
}

describe('a row that could not be saved when the console was closed', () => {
  let at: { readonly folder: string; readonly home: string };
  beforeEach(async () => {
    at = await closedFull();
  });
  const world = (stdin = '') => {
    const heard = hear(stdin);
    return { ...heard, outside: { ...heard.outside, env: { HOME: at.home } } };
  };
  const waits = () => readdirSync(join(at.home, '.offsider')).length;
  const WAITS = 'one edit that could not be saved when the console was closed is not in the log yet';
  const PUT_IN = 'one edit that could not be saved when the console was closed is in the log now';

  it('is named by holes, which leaves it waiting', async () => {
    const heard = world();
    expect(await holes(heard.outside, { folder: at.folder, json: false })).toBe(0);
    expect(heard.err()).toContain(WAITS);
    expect(heard.err()).toContain('logged 46–47');
    expect(waits()).toBe(1);
  });

  it('is named by check, as text, as data and for one hole', async () => {
    for (const asked of [{ json: false }, { json: true }, { json: false, hole: 'MBRC003' }]) {
      const heard = world();
      await check(heard.outside, { folder: at.folder, ...asked });
      expect(heard.out()).toContain(WAITS);
      expect(heard.out()).toContain('logged 46–47');
    }
    expect(waits()).toBe(1);
  });

  it('is put in by pack, which says so, and goes with the bundle', async () => {
    const heard = world();
    expect(await pack(heard.outside, { folder: at.folder, names: ['MBRC003'] })).toBe(0);
    expect(heard.err()).toContain(PUT_IN);
    expect(waits()).toBe(0);
    const { tables } = JSON.parse(readFileSync(join(at.folder, 'holes/MBRC003.json'), 'utf8'));
    expect(Object.values<{ fromMm: number }>(tables.rows).some(({ fromMm }) => fromMm === 46_000)).toBe(true);
  });

  it('is put in by enter, which says so before the next row follows it', async () => {
    const heard = world('nr\n');
    const code = await enter(heard.outside, { folder: at.folder, hole: 'MBRC003', keepGoing: false });
    expect(heard.err()).toContain(PUT_IN);
    expect(heard.out()).toMatch(/^1: CAUTION no return: .* 47–48/);
    expect(code).toBe(0);
    expect(waits()).toBe(0);
  });
});

describe('a clock that is behind the log', () => {
  const SET_BACK = { nowMs: () => Date.UTC(2020, 0, 1), offsetMin: () => 480 };

  it('is said by enter beside its answer, and by check; by holes, which stamps nothing, not', async () => {
    const folder = copyOfSample();
    const entering = hear('p1\n');
    await enter({ ...entering.outside, clock: SET_BACK }, { folder, hole: 'MBRC003', keepGoing: false });
    expect(entering.err()).toMatch(/clock/);
    const checking = hear();
    await check({ ...checking.outside, clock: SET_BACK }, { folder, json: false });
    expect(checking.out()).toMatch(/clock/);
    const listing = hear();
    await holes({ ...listing.outside, clock: SET_BACK }, { folder, json: false });
    expect(listing.err()).toBe('');
  });
});
