import { describe, expect, it } from 'vitest';
import { type Desk, openDesk } from '../../src/desk/desk.ts';
import type { Disk } from '../../src/files/disk.ts';
import { readDocumentFile } from '../../src/files/document-file.ts';
import { chainFault, replay } from '../../src/record/chain.ts';
import { faultOptions } from '../faults/sitting.ts';
import { done } from './support/project.ts';
import { troubledDesk } from './support/troubled.ts';
import { HOLE, holeMade, rowLogged } from './support/values.ts';

const FILE = '/project/holes/ZQRC001.json';
let seed = 40;

async function open(disk: Disk): Promise<Desk> {
  seed += 1;
  const opened = await openDesk({ ...faultOptions(disk, seed), after: () => () => {} });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  return opened.value;
}

async function write(disk: Disk, text: string): Promise<void> {
  await disk.unlink(FILE).catch(() => {});
  const file = await disk.create(FILE);
  await file.write(new TextEncoder().encode(text));
  await file.sync();
}

const textOf = async (disk: Disk): Promise<string> => new TextDecoder().decode(await disk.readFile(FILE));
const rowsOf = (desk: Desk): number => Object.keys(desk.get(HOLE)?.tables.rows ?? {}).length;
const found = (desk: Desk) => desk.findings().filter(({ place }) => place.file === 'holes/ZQRC001.json');

/** A hole of three rows, its file written after each and the console closed: every line of the journal is in the file. */
async function threeRowsFiled() {
  const { desk, disk } = await troubledDesk();
  await done(desk, HOLE, holeMade(), 'hole made');
  const texts: string[] = [];
  for (const metre of [0, 1, 2]) {
    await done(desk, HOLE, [rowLogged(desk.newId(), metre)], `${metre}–${metre + 1} logged`);
    await desk.snapshot();
    texts.push(await textOf(disk));
  }
  await desk.close();
  return { disk, texts };
}

/** What is kept of the journal is gone, as after a clean-up or a copy of the folder that left it out. */
async function forgetPast(disk: Disk): Promise<void> {
  for (const name of await disk.list('/project/journal'))
    if (name.endsWith('.past')) await disk.unlink(`/project/journal/${name}`);
}

describe('an older copy laid over a file while no console was open', () => {
  it('is noticed at the next opening, and every row that it lacks is put back', async () => {
    const { disk, texts } = await threeRowsFiled();
    await write(disk, texts[0] ?? '');
    const desk = await open(disk);
    expect(rowsOf(desk)).toBe(3);
    expect(found(desk)).toMatchObject([
      { code: 'rolled-back-and-restored', severity: 'warning', excerpt: '1–2 logged; 2–3 logged' },
    ]);
    // The file is written again, and nothing is said of it once more.
    await done(desk, HOLE, [rowLogged(desk.newId(), 3)], '3–4 logged');
    await desk.close();
    const hole = desk.get(HOLE);
    expect(chainFault(hole?.history ?? [])).toBeUndefined();
    expect(replay(hole?.history ?? [])).toEqual(hole?.tables);
    const again = await open(disk);
    expect(rowsOf(again)).toBe(4);
    expect(found(again)).toEqual([]);
    await again.close();
  });

  it('is brought up to date also where the console was killed with rows that only the journal held', async () => {
    const { disk, texts } = await threeRowsFiled();
    const desk = await open(disk);
    await done(desk, HOLE, [rowLogged(desk.newId(), 3)], '3–4 logged');
    await write(disk, texts[1] ?? '');
    const again = await open(disk);
    expect(rowsOf(again)).toBe(4);
    expect(found(again).map(({ code }) => code)).toEqual(['rolled-back-and-restored']);
    await again.close();
  });

  it('is a fault at every opening where the rows are not there any more, until the later copy comes: both are merged', async () => {
    const { disk, texts } = await threeRowsFiled();
    await write(disk, texts[0] ?? '');
    await forgetPast(disk);
    const desk = await open(disk);
    expect(rowsOf(desk)).toBe(1);
    expect(found(desk)).toMatchObject([{ code: 'file-rolled-back', severity: 'fault' }]);
    expect(found(desk)[0]?.remedy).toContain('receive');
    await done(desk, HOLE, [rowLogged(desk.newId(), 7)], '7–8 logged');
    await desk.close();
    const later = await open(disk);
    expect(found(later).map(({ code }) => code)).toEqual(['file-rolled-back']);
    expect(later.missing()).toMatchObject([{ name: HOLE, isOlder: true }]);
    const copy = readDocumentFile(
      { file: 'x.json', text: texts[2] ?? '', value: JSON.parse(texts[2] ?? '') },
      HOLE,
    );
    if (!copy.ok) throw new Error(copy.findings[0]?.problem);
    const received = later.receive(copy.value.document);
    if (!received.ok) throw new Error(received.problem);
    await received.durable;
    expect(rowsOf(later)).toBe(4);
    await later.close();
    const last = await open(disk);
    expect([rowsOf(last), found(last)]).toEqual([4, []]);
    await last.close();
  });

  it('is worked on knowingly with a reason, which its history holds, and is not said again', async () => {
    const { disk, texts } = await threeRowsFiled();
    await write(disk, texts[0] ?? '');
    await forgetPast(disk);
    const desk = await open(disk);
    expect((await desk.letGo(HOLE, ' ')).ok).toBe(false);
    expect(await desk.letGo(HOLE, 'logged in the wrong hole')).toEqual({ ok: true });
    expect([found(desk), desk.missing()]).toEqual([[], []]);
    expect(desk.get(HOLE)?.history.at(-1)?.what).toBe(
      'goes on from an older copy, later edits given up: logged in the wrong hole',
    );
    await desk.close();
    const again = await open(disk);
    expect([rowsOf(again), found(again)]).toEqual([1, []]);
    await again.close();
  });
});
