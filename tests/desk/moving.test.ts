import { describe, expect, it } from 'vitest';
import { openDesk } from '../../src/desk/desk.ts';
import type { Disk } from '../../src/files/disk.ts';
import { faultOptions } from '../faults/sitting.ts';
import { done } from './support/project.ts';
import { troubledDesk } from './support/troubled.ts';
import { HOLE, holeMade, rowLogged } from './support/values.ts';

async function put(disk: Disk, path: string, text: string): Promise<void> {
  const steps = path.split('/').slice(1, -1);
  for (let depth = 1; depth <= steps.length; depth += 1)
    await disk.makeFolder(`/${steps.slice(0, depth).join('/')}`);
  const file = await disk.create(path);
  await file.write(new TextEncoder().encode(text));
}

const textOf = async (disk: Disk, path: string): Promise<string> =>
  new TextDecoder().decode(await disk.readFile(path));

/** A closed project with a hole, then something done to its folder, then opened again with trouble to be had. */
async function reopened(change: (disk: Disk) => Promise<void>) {
  const { desk, disk, trouble } = await troubledDesk();
  await done(desk, HOLE, holeMade());
  await done(desk, HOLE, [rowLogged(desk.newId(), 0)]);
  await desk.close();
  await change(disk);
  const opened = await openDesk({ ...faultOptions(disk, 8), after: () => () => {} });
  if (!opened.ok) throw new Error('must open');
  return { desk: opened.value, disk, trouble };
}

describe('going on in another folder', () => {
  it('everything can be moved to another folder, where work goes on; the old one is left as it is', async () => {
    const { desk, trouble, disk } = await troubledDesk();
    await done(desk, HOLE, holeMade());
    trouble.now = 'EIO';
    await done(desk, HOLE, [rowLogged(desk.newId(), 0)]);
    expect(await desk.moveTo('/project')).toMatchObject({ ok: false });
    const moved = await desk.moveTo('/elsewhere');
    expect(moved.ok && moved.left.map(({ problem }) => problem)).toEqual([
      "it was not taken along: it can't be read: the disk reports a fault",
    ]);
    expect(desk.folder()).toBe('/elsewhere');
    expect(desk.health()).toMatchObject({ state: 'safe', unsafeEdits: 0 });
    expect(await done(desk, HOLE, [rowLogged(desk.newId(), 1)])).toMatchObject({ ok: true });
    expect(await desk.close()).toEqual({ ok: true });
    const there = await openDesk({ ...faultOptions(disk, 6), folder: '/elsewhere' });
    expect(there.ok && Object.keys(there.value.get(HOLE)?.tables.rows ?? {})).toHaveLength(2);
    expect(there.ok && there.value.findings()).toEqual([]);
    trouble.now = undefined;
    const old = await openDesk(faultOptions(disk, 7));
    expect(old.ok && Object.keys(old.value.get(HOLE)?.tables.rows ?? {})).toHaveLength(0);
  });

  it('is not moved into a folder that holds anything', async () => {
    const { desk, disk } = await troubledDesk();
    await disk.makeFolder('/elsewhere');
    await disk.create('/elsewhere/notes.txt');
    expect(await desk.moveTo('/elsewhere')).toEqual({ ok: false, problem: 'that folder is not empty' });
    await desk.close();
  });

  it('takes along what no one could read, what was kept aside and what the schema extends, byte for byte', async () => {
    const files = {
      'holes/ZQRC002.json': '{ "format": 1, half',
      'holes/old copy.txt': 'notes',
      'journal/kept/holes-ZQRC001.json.unreadable.1': 'once',
      'journal/000001.jsonl.damaged': 'a line',
      'outbox/pack.zip': 'PK',
      'styles/west.json': '{ "format": 1 }',
      'program.csv': 'hole,depth',
    };
    const { desk, disk, trouble } = await reopened(async (each) => {
      for (const [file, text] of Object.entries(files)) await put(each, `/project/${file}`, text);
    });
    trouble.now = 'ENOSPC';
    expect(await desk.moveTo('/elsewhere')).toEqual({ ok: true, left: [] });
    for (const [file, text] of Object.entries(files))
      expect(await textOf(disk, `/elsewhere/${file}`)).toBe(text);
    await desk.close();
    const moved = await openDesk({ ...faultOptions(disk, 9), folder: '/elsewhere' });
    expect(moved.ok && moved.value.closed.get('hole/ZQRC002')).toBe('its file cannot be read');
    expect(moved.ok && Object.keys(moved.value.get(HOLE)?.tables.rows ?? {})).toHaveLength(1);
  });

  it('names what it leaves behind: photographs, links, what the disk does not give, and says it at once', async () => {
    const { desk, disk } = await reopened(async (each) => {
      await put(each, '/project/photos/a.jpg', 'x');
      await put(each, '/project/photos/b.jpg', 'x');
      await put(each, '/project/holes/ZQRC003.json', '{}');
    });
    const refusing: Disk['readFile'] = disk.readFile;
    disk.readFile = async (path) => {
      if (path === '/project/holes/ZQRC003.json') throw Object.assign(new Error('gone'), { code: 'EIO' });
      return refusing(path);
    };
    const moved = await desk.moveTo('/elsewhere');
    expect(moved.ok && moved.left.map(({ place, problem }) => `${place.file}: ${problem}`)).toEqual([
      "photos: it was not taken along: 2 files in it are none of the project's",
      'holes/ZQRC003.json: it was not taken along: it could not be copied: the disk reports a fault',
    ]);
    expect(desk.findings().map((finding) => finding.code)).toContain('left-behind');
    await desk.close();
  });

  it('takes along the lines of a file that is missing, and the file is as missing there', async () => {
    const { desk, disk } = await reopened(async () => {});
    await done(desk, HOLE, [rowLogged(desk.newId(), 1)], '1–2 logged');
    await disk.unlink('/project/holes/ZQRC001.json');
    const again = await openDesk({ ...faultOptions(disk, 9), after: () => () => {} });
    if (!again.ok) throw new Error('must open');
    expect(again.value.closed.get('hole/ZQRC001')).toBe('its file is missing');
    expect(await again.value.moveTo('/elsewhere')).toEqual({ ok: true, left: [] });
    await again.value.close();
    expect(await textOf(disk, '/elsewhere/journal/000001.jsonl')).toContain('1–2 logged');
    const moved = await openDesk({ ...faultOptions(disk, 10), folder: '/elsewhere' });
    expect(moved.ok && moved.value.closed.get('hole/ZQRC001')).toBe('its file is missing');
  });

  it('loses nothing that is logged while it is under way, on a disk that takes some of it and not all', async () => {
    const { desk, disk, trouble } = await reopened(async () => {});
    const opened = disk.create;
    let logged = 1;
    disk.create = async (path) => {
      if (path.startsWith('/elsewhere') && logged < 4) {
        trouble.now = logged % 2 === 0 ? 'EIO' : undefined;
        const saved = done(desk, HOLE, [rowLogged(desk.newId(), logged)], `${logged} logged`);
        if (logged < 3) await saved;
        logged += 1;
      }
      return opened(path);
    };
    expect(await desk.moveTo('/elsewhere')).toMatchObject({ ok: true });
    expect(logged).toBe(4);
    expect(await desk.retry()).toMatchObject({ state: 'safe' });
    // Killed here: what was shown as safe is in the new folder, in its journal if not in its files.
    const moved = await openDesk({ ...faultOptions(disk, 9), folder: '/elsewhere' });
    expect(moved.ok && Object.keys(moved.value.get(HOLE)?.tables.rows ?? {})).toHaveLength(4);
  });

  it('leaves no lock in a folder that it could not fill, and project.json is the last thing in it', async () => {
    const { desk, disk } = await reopened(async () => {});
    const opened = disk.create;
    let made = 0;
    disk.create = async (path) => {
      made += path.startsWith('/elsewhere') ? 1 : 0;
      if (made > 2) throw Object.assign(new Error('full'), { code: 'ENOSPC' });
      return opened(path);
    };
    expect(await desk.moveTo('/elsewhere')).toEqual({
      ok: false,
      problem: 'it cannot be written there: the disk is full',
    });
    expect(await disk.list('/elsewhere/journal')).not.toContain('lock.json');
    expect(await disk.list('/elsewhere')).not.toContain('project.json');
    expect(desk.folder()).toBe('/project');
    expect(desk.health().state).toBe('safe');
    await desk.close();
  });
});
