import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import type { Disk } from '../../src/files/disk.ts';
import { realDisk } from '../../src/files/real-disk.ts';
import { troubledDesk } from './support/troubled.ts';
import { HOLE, holeMade, rowLogged } from './support/values.ts';

const PATH = '/project/holes/ZQRC001.json';

async function withHole(more: Parameters<typeof troubledDesk>[0] = {}) {
  const at = await troubledDesk(more);
  const log = async (metre: number) => {
    const done = at.desk.submit({
      what: 'logged',
      parts: [{ document: HOLE, changes: [rowLogged(at.desk.newId(), metre)] }],
    });
    if (!done.ok) throw new Error(done.problem);
    await done.durable;
  };
  const made = at.desk.submit({ what: 'made', parts: [{ document: HOLE, changes: holeMade() }] });
  if (!made.ok) throw new Error(made.problem);
  await made.durable;
  await log(0);
  await at.desk.snapshot();
  return { ...at, log };
}

/** Another program writes the hole's file. */
async function written(disk: Disk, change: (text: string) => string): Promise<string> {
  const text = new TextDecoder().decode(await disk.readFile(PATH));
  await disk.unlink(PATH);
  const file = await disk.create(PATH);
  await file.write(new TextEncoder().encode(change(text)));
  return text;
}

const problems = (desk: { findings: () => readonly { readonly problem: string }[] }) =>
  desk.findings().map(({ problem }) => problem);
const TAKEN_IN = 'another program wrote this file while the project was open; the change was taken in';
const NOTHING_NEW =
  'another program wrote this file while the project was open; nothing in it is new, and what is logged is kept';
const suspended = (text: string) => text.replace('"drilling"', '"suspended"');

describe('a file that another program writes while the project is open', () => {
  it('is taken in and said with the next edit, long before our own file is due', async () => {
    const { desk, disk, log } = await withHole();
    await written(disk, suspended);
    await log(1);
    await vi.waitFor(() => expect(problems(desk)).toEqual([TAKEN_IN]));
    expect(desk.get(HOLE)?.tables.hole?.hole?.state).toBe('suspended');
    expect(Object.keys(desk.get(HOLE)?.tables.rows ?? {})).toHaveLength(2);
    await log(2);
    await desk.look();
    expect(problems(desk)).toEqual([TAKEN_IN]);
    await desk.close();
  });

  it('and puts an older copy in the place of ours is said, and ours is written again', async () => {
    const { desk, disk, log } = await withHole();
    const older = new TextDecoder().decode(await disk.readFile(PATH));
    await log(1);
    await desk.snapshot();
    await written(disk, () => older);
    await desk.look();
    expect(problems(desk)).toEqual([NOTHING_NEW]);
    expect(Object.keys(desk.get(HOLE)?.tables.rows ?? {})).toHaveLength(2);
    await desk.snapshot();
    expect(
      Object.keys(JSON.parse(new TextDecoder().decode(await disk.readFile(PATH))).tables.rows),
    ).toHaveLength(2);
    await desk.close();
  });

  it('without a change is said so: nothing was taken in', async () => {
    const { desk, disk, log } = await withHole();
    const before = desk.get(HOLE);
    await written(disk, (text) => text);
    await desk.look();
    expect(problems(desk)).toEqual([NOTHING_NEW]);
    expect(desk.get(HOLE)).toEqual(before);
    await log(1);
    await written(disk, (text) => text);
    await desk.look();
    expect(problems(desk)).toEqual([NOTHING_NEW, NOTHING_NEW]);
    expect(Object.keys(desk.get(HOLE)?.tables.rows ?? {})).toHaveLength(2);
    await desk.close();
  });

  it('or takes away is written again at once, whole, before it is said that it is', async () => {
    const { desk, disk, log } = await withHole();
    await log(1);
    const before = JSON.parse(new TextDecoder().decode(await disk.readFile(PATH)));
    await disk.unlink(PATH);
    await desk.look();
    await vi.waitFor(() => expect(problems(desk)).toHaveLength(1));
    const rows = JSON.parse(new TextDecoder().decode(await disk.readFile(PATH))).tables.rows;
    expect(Object.keys(rows)).toHaveLength(2);
    expect(rows).toMatchObject(before.tables.rows);
    await desk.look();
    expect(problems(desk)).toEqual([
      'another program took this file away while the project was open; it was written again, whole',
    ]);
    expect(desk.findings()[0]?.place).toEqual({ file: 'holes/ZQRC001.json', hole: 'ZQRC001' });
    await desk.close();
  });

  it('and that can’t be read is said once, and never written over', async () => {
    const { desk, disk, log } = await withHole();
    await written(disk, () => '{"half a fi');
    await log(1);
    await vi.waitFor(() => expect(desk.findings().length).toBeGreaterThan(0));
    const said = problems(desk);
    await log(2);
    await desk.look();
    await desk.snapshot();
    expect(problems(desk)).toEqual(said);
    expect(Object.keys(desk.get(HOLE)?.tables.rows ?? {})).toHaveLength(3);
    const kept = (await disk.list('/project/journal/kept')).filter((name) => name.includes('ZQRC001'));
    expect(kept.length).toBeGreaterThan(0);
    await desk.close();
  });

  it('is looked at a second after the folder changed, several changes at once; and never by itself', async () => {
    const waiting: { readonly ms: number; readonly run: () => void }[] = [];
    const watched = new Map<string, () => void>();
    const { desk, disk } = await withHole({
      after: (ms, run) => {
        waiting.push({ ms, run });
        return () => {};
      },
    });
    (disk as { watch?: Disk['watch'] }).watch = (folder, changed) => {
      watched.set(folder, changed);
      return () => watched.delete(folder);
    };
    const stop = desk.watch();
    waiting.splice(0);
    await written(disk, suspended);
    expect(waiting).toEqual([]);
    watched.get('/project/holes')?.();
    watched.get('/project/holes')?.();
    expect(waiting.map(({ ms }) => ms)).toEqual([1000]);
    waiting[0]?.run();
    await vi.waitFor(() => expect(problems(desk)).toEqual([TAKEN_IN]));
    stop();
    expect(watched.size).toBe(0);
    await desk.close();
  });

  it('is told of by the disk of this machine', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'offsider-watch-'));
    try {
      const told = new Promise<void>((resolve) => {
        const stop = realDisk.watch?.(folder, () => {
          stop?.();
          resolve();
        });
      });
      writeFileSync(join(folder, 'a.json'), '{}');
      await told;
      expect(realDisk.watch?.(join(folder, 'not there'), () => {})).toBeTypeOf('function');
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
