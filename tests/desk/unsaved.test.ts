import { describe, expect, it } from 'vitest';
import { openDesk } from '../../src/desk/desk.ts';
import type { Disk } from '../../src/files/disk.ts';
import { writeDurably } from '../../src/files/write-durably.ts';
import { faultOptions } from '../faults/sitting.ts';
import { done } from './support/project.ts';
import { troubledDesk } from './support/troubled.ts';
import { HOLE, holeMade, rowLogged } from './support/values.ts';

const HOME = { unsavedFolder: '/home' };

async function reopened(disk: Disk) {
  const opened = await openDesk({ ...faultOptions(disk, 9), ...HOME });
  if (!opened.ok) throw new Error('must open');
  return opened.value;
}

/** A console whose terminal goes while its disk is full: two rows are in memory alone. */
async function closedFull() {
  const { desk, trouble, disk } = await troubledDesk(HOME);
  await done(desk, HOLE, holeMade(), 'made');
  await done(desk, HOLE, [rowLogged('k-1', 0)], '0–1 logged');
  trouble.now = 'ENOSPC';
  await done(desk, HOLE, [rowLogged('k-2', 1)], '1–2 logged');
  void done(desk, HOLE, [rowLogged('k-3', 2)], '2–3 logged');
  const closed = await desk.close({ abandon: true, keep: true });
  trouble.now = undefined;
  return { disk, closed };
}

describe('a project that is only read', () => {
  it('says which edits wait to be put in, and leaves them waiting', async () => {
    const { disk } = await closedFull();
    const opened = await openDesk({ ...faultOptions(disk, 9), ...HOME, readOnly: true });
    if (!opened.ok) throw new Error('must open');
    expect(opened.value.findings()).toContainEqual(
      expect.objectContaining({
        code: 'unsaved-put-in',
        excerpt: '1–2 logged; 2–3 logged',
        problem: '2 edits that could not be saved when the console was closed are not in the log yet',
      }),
    );
    expect(await disk.list('/home')).toHaveLength(1);
  });
});

describe('a console that is closed with rows that the disk does not take', () => {
  it('keeps them elsewhere and says where; the next start puts them in once, and says so', async () => {
    const { disk, closed } = await closedFull();
    expect(closed).toMatchObject({
      ok: false,
      problem: expect.stringMatching(
        /^2 edits are not in the project: the disk is full\. Kept in \/home\/unsaved-.*: the next start on this computer puts them in$/,
      ),
    });
    const again = await reopened(disk);
    expect(Object.keys(again.get(HOLE)?.tables.rows ?? {})).toEqual(['k-1', 'k-2', 'k-3']);
    expect(again.findings()).toContainEqual(
      expect.objectContaining({ code: 'unsaved-put-in', excerpt: '1–2 logged; 2–3 logged' }),
    );
    expect(await again.close()).toEqual({ ok: true });
    expect(await disk.list('/home')).toEqual([]);
    const third = await reopened(disk);
    expect(third.findings()).toEqual([]);
    expect(Object.keys(third.get(HOLE)?.tables.rows ?? {})).toHaveLength(3);
    await third.close();
  });

  it('gives no id of them again: the rows logged next are new ones', async () => {
    const { desk, trouble, disk } = await troubledDesk(HOME);
    await done(desk, HOLE, holeMade(), 'made');
    trouble.now = 'ENOSPC';
    const log = (on: typeof desk, metre: number) =>
      on.submit({
        what: `${metre}`,
        parts: [{ document: HOLE, changes: [rowLogged(on.newId(), metre)] }],
      });
    for (const metre of [0, 1, 2]) expect(log(desk, metre)).toMatchObject({ ok: true });
    await desk.close({ abandon: true, keep: true });
    trouble.now = undefined;
    const again = await reopened(disk);
    for (const metre of [3, 4, 5]) expect(log(again, metre)).toMatchObject({ ok: true });
    await again.snapshot();
    const hole = again.get(HOLE);
    expect(Object.values(hole?.tables.rows ?? {}).map(({ fromMm }) => fromMm)).toEqual([
      0, 1000, 2000, 3000, 4000, 5000,
    ]);
    const edits = hole?.history.map(({ edit }) => edit) ?? [];
    expect(new Set(edits).size).toBe(7);
    await again.close();
  });

  it('with someone else logging in between puts both in, and keeps what no longer fits', async () => {
    const { disk } = await closedFull();
    const between = await openDesk(faultOptions(disk, 5));
    if (!between.ok) throw new Error('must open');
    await done(
      between.value,
      HOLE,
      [{ remove: ['hole', 'hole'] }, { remove: ['rows', 'k-1'] }],
      'taken back',
    );
    await between.value.close();
    const again = await reopened(disk);
    const [found] = again.findings().filter(({ code }) => code === 'unsaved-put-in');
    expect(found?.problem).toContain('2 could not be put into the log');
    expect(await disk.list('/home')).toHaveLength(1);
    await again.close();
  });

  it('says what is lost where no other disk takes it either', async () => {
    const { desk, trouble } = await troubledDesk({ unsavedFolder: '/project/none' });
    await done(desk, HOLE, holeMade(), 'made');
    trouble.now = 'ENOSPC';
    await done(desk, HOLE, [rowLogged('k-2', 1)], '1–2 logged');
    expect(await desk.close({ abandon: true, keep: true })).toMatchObject({
      ok: false,
      problem: expect.stringContaining(
        'Not saved: 1–2 logged; nor could they be kept elsewhere: the disk is full',
      ),
    });
  });
});

describe('kept edits of which not all is sound', () => {
  /** The one file in the folder of kept edits. */
  const keptIn = async (disk: Disk): Promise<string> => `/home/${(await disk.list('/home'))[0] ?? ''}`;
  const rewrite = async (disk: Disk, change: (text: string) => string): Promise<void> => {
    const file = await keptIn(disk);
    const text = new TextDecoder().decode(await disk.readFile(file));
    await disk.unlink(file);
    await writeDurably(disk, file, new TextEncoder().encode(change(text)), 'new');
  };

  it('a damaged line is named and kept, and the sound one beside it is put in', async () => {
    const { disk } = await closedFull();
    await rewrite(disk, (text) => text.replace('"2–3 logged"', '"2–3 lo'));
    const again = await reopened(disk);
    expect(Object.keys(again.get(HOLE)?.tables.rows ?? {})).toEqual(['k-1', 'k-2']);
    expect(again.findings()).toContainEqual(
      expect.objectContaining({
        code: 'unsaved-put-in',
        problem: expect.stringContaining('is in the log now; a line of it can’t be read'),
        remedy: expect.stringContaining('Nothing of it is deleted'),
      }),
    );
    await again.close();
    const text = new TextDecoder().decode(await disk.readFile(await keptIn(disk)));
    expect([text.includes('2–3 lo'), text.includes('1–2 logged')]).toEqual([true, false]);
    const third = await reopened(disk);
    expect(Object.keys(third.get(HOLE)?.tables.rows ?? {})).toHaveLength(2);
    expect(third.findings().map(({ code }) => code)).toContain('unsaved-put-in');
    await third.close();
  });

  it('a file that can’t be read hides no other, and is named', async () => {
    const { disk } = await closedFull();
    const file = (await keptIn(disk)).replace(/\.[^.]*\.jsonl$/, '.0000.jsonl');
    await writeDurably(disk, file, new Uint8Array(1), 'new');
    const failing: Disk = {
      ...disk,
      readFile: async (path, most) => {
        if (path === file) throw Object.assign(new Error('EIO'), { code: 'EIO' });
        return disk.readFile(path, most);
      },
    };
    const again = await reopened(failing);
    expect(Object.keys(again.get(HOLE)?.tables.rows ?? {})).toEqual(['k-1', 'k-2', 'k-3']);
    expect(
      again
        .findings()
        .map(({ problem }) => problem)
        .join(' '),
    ).toContain('may hold edits that could not be saved');
    expect(await disk.list('/home')).toEqual([file.slice('/home/'.length)]);
    await again.close();
  });

  it('a row whose id another console gave to a row of its own is put in under a new one', async () => {
    const { disk } = await closedFull();
    const other = await openDesk({ ...faultOptions(disk, 9) });
    if (!other.ok) throw new Error('must open');
    await done(other.value, HOLE, [rowLogged('k-2', 7)], '7–8 logged');
    await other.value.close();
    const again = await reopened(disk);
    const rows = Object.values(again.get(HOLE)?.tables.rows ?? {});
    expect(rows.map(({ fromMm }) => Number(fromMm)).sort((a, b) => a - b)).toEqual([0, 1000, 2000, 7000]);
    expect(
      again
        .findings()
        .map(({ problem }) => problem)
        .join(' '),
    ).toContain('2 edits that could not be saved when the console was closed are in the log now');
    expect(await disk.list('/home')).toEqual([]);
    await again.close();
  });
});
