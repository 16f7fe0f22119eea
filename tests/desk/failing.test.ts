import { describe, expect, it } from 'vitest';
import { openDesk } from '../../src/desk/desk.ts';
import type { Fault } from '../faults/recording-disk.ts';
import { faultOptions, impatient } from '../faults/sitting.ts';
import { done } from './support/project.ts';
import { troubledDesk } from './support/troubled.ts';
import { HOLE, holeMade, rowLogged } from './support/values.ts';

describe('when the disk refuses in the middle of a sitting', () => {
  it.each<[Fault, string]>([
    ['ENOSPC', 'the disk is full'],
    ['EIO', 'the disk reports a fault'],
    ['lost sync', 'the disk reports a fault'],
  ])(
    '%s: the row stays in memory, health says which rows are not safe and why, and saving resumes by itself',
    async (fault, reason) => {
      const { desk, trouble, disk } = await troubledDesk();
      await done(desk, HOLE, holeMade(), 'hole made');
      trouble.now = fault;
      expect(await done(desk, HOLE, [rowLogged(desk.newId(), 0)], '0–1 logged')).toEqual({
        ok: false,
        problem: reason,
      });
      expect(Object.keys(desk.get(HOLE)?.tables.rows ?? {})).toHaveLength(1);
      expect(desk.health()).toMatchObject({ state: 'unsafe', unsafeEdits: 1, reason });
      expect(desk.health().waiting.map((edit) => edit.what)).toEqual(['0–1 logged']);
      const second = done(desk, HOLE, [rowLogged(desk.newId(), 1)], '1–2 logged');
      expect(desk.health().unsafeEdits).toBe(2);
      expect((await desk.retry()).state).toBe('unsafe');
      expect(await desk.close()).toEqual({ ok: false, problem: `2 edits are not saved: ${reason}` });
      trouble.now = undefined;
      expect(await desk.retry()).toMatchObject({ state: 'safe', unsafeEdits: 0 });
      expect((await second).ok).toBe(false);
      expect(await desk.close()).toEqual({ ok: true });
      const again = await openDesk(faultOptions(disk, 4));
      expect(again.ok && Object.keys(again.value.get(HOLE)?.tables.rows ?? {})).toHaveLength(2);
      expect(again.ok && again.value.findings()).toEqual([]);
    },
  );

  it('tries again after a pause that grows, and stops trying when it is safe', async () => {
    const { disk, trouble } = await troubledDesk();
    const pauses: number[] = [];
    const opened = await openDesk({
      ...faultOptions(disk, 5),
      takeOver: true,
      after: (ms, run) => {
        pauses.push(ms);
        if (pauses.length === 6) trouble.now = undefined;
        return impatient(ms, run);
      },
    });
    if (!opened.ok) throw new Error('must open');
    const desk = opened.value;
    trouble.now = 'EIO';
    await done(desk, HOLE, holeMade());
    while (desk.health().state !== 'safe') await new Promise((turn) => setImmediate(turn));
    expect(pauses.slice(0, 6)).toEqual([250, 500, 1000, 2000, 4000, 5000]);
    await desk.close();
  });

  it('never writes to a file again whose sync has failed', async () => {
    const { desk, trouble, disk } = await troubledDesk();
    await done(desk, HOLE, holeMade());
    trouble.now = 'lost sync';
    await done(desk, HOLE, [rowLogged(desk.newId(), 0)]);
    trouble.now = undefined;
    await desk.retry();
    await done(desk, HOLE, [rowLogged(desk.newId(), 1)]);
    const journals = (await disk.list('/project/journal')).filter((name) => name.endsWith('.jsonl'));
    expect(journals).toEqual(['000001.jsonl', '000002.jsonl']);
    const text = new TextDecoder().decode(await disk.readFile('/project/journal/000002.jsonl'));
    expect(text.split('\n').map((line) => /"seq":(\d+)/.exec(line)?.[1])).toEqual([
      undefined,
      '1',
      '2',
      '3',
      undefined,
    ]);
    await desk.close();
  });

  it('a lock that went missing with its folder is made again when the folder is back', async () => {
    const { desk, disk } = await troubledDesk();
    await done(desk, HOLE, holeMade());
    await disk.unlink('/project/journal/lock.json');
    expect(await done(desk, HOLE, [rowLogged(desk.newId(), 0)])).toMatchObject({ ok: true });
    expect(await disk.list('/project/journal')).toContain('lock.json');
    await desk.close();
  });
});

describe('when a file is written by someone else while the desk is open', () => {
  it('it is kept and taken in, and neither copy is lost', async () => {
    const { desk, disk } = await troubledDesk();
    await done(desk, HOLE, holeMade());
    await desk.snapshot();
    const path = '/project/holes/ZQRC001.json';
    const text = new TextDecoder().decode(await disk.readFile(path));
    await disk.unlink(path);
    const file = await disk.create(path);
    await file.write(new TextEncoder().encode(text.replace('"drilling"', '"suspended"')));
    await done(desk, HOLE, [rowLogged(desk.newId(), 0)]);
    await desk.snapshot();
    expect(desk.findings().map((finding) => finding.code)).toEqual(['edited-outside']);
    expect(desk.get(HOLE)?.tables.hole?.hole?.state).toBe('suspended');
    expect(Object.keys(desk.get(HOLE)?.tables.rows ?? {})).toHaveLength(1);
    expect(await disk.list('/project/journal/kept')).toEqual([
      'holes-ZQRC001.json.edited-outside.1',
      'project.json.read.1',
    ]);
    await desk.close();
    const again = await openDesk(faultOptions(disk, 9));
    expect(again.ok && again.value.findings()).toEqual([]);
    expect(again.ok && again.value.get(HOLE)).toEqual(desk.get(HOLE));
  });
});

describe('files written by hand', () => {
  it('are replaced with the former text kept, and not where they were edited since they were read', async () => {
    const { desk, disk } = await troubledDesk();
    expect(desk.project()?.value).toEqual({});
    const written = await desk.writeByHand('project', '{ "name": "Quokka Hill" }\n');
    expect(written.ok && written.value.value).toEqual({ name: 'Quokka Hill' });
    expect(await disk.list('/project/journal/kept')).toEqual([
      'project.json.before.1',
      'project.json.read.1',
    ]);
    await disk.unlink('/project/project.json');
    const file = await disk.create('/project/project.json');
    await file.write(new TextEncoder().encode('{ "name": "by hand" }'));
    const refused = await desk.writeByHand('project', '{}');
    expect(refused.ok ? '' : refused.findings[0]?.problem).toBe('it was edited since it was read');
    expect((await desk.writeByHand('logging', '{"a":1,}')).ok).toBe(false);
    await desk.close();
  });

  it('files for others are written whole into a folder of the project', async () => {
    const { desk, disk } = await troubledDesk();
    expect(await desk.writeOut('outbox/plod.csv', new TextEncoder().encode('a,b\n'))).toEqual({ ok: true });
    expect(await disk.list('/project/outbox')).toEqual(['plod.csv']);
    await desk.close();
  });
});
