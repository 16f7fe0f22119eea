import { describe, expect, it } from 'vitest';
import { openDesk } from '../../src/desk/desk.ts';
import type { Disk } from '../../src/files/disk.ts';
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
        problem: '2 edits that the disk had not taken when the console was closed are not in the log yet',
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
