import { describe, expect, it } from 'vitest';
import { type Desk, openDesk } from '../../src/desk/desk.ts';
import type { Disk } from '../../src/files/disk.ts';
import { chainFault, replay } from '../../src/record/chain.ts';
import { faultOptions } from '../faults/sitting.ts';
import { done } from './support/project.ts';
import { troubledDesk } from './support/troubled.ts';
import { HOLE, holeMade, rowLogged } from './support/values.ts';

const FILE = '/project/holes/ZQRC001.json';
let seed = 20;

async function open(disk: Disk): Promise<Desk> {
  seed += 1;
  const opened = await openDesk({ ...faultOptions(disk, seed), after: () => () => {} });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  return opened.value;
}

/** A project whose console was killed after two more rows (and an amendment), and whose hole's file was then deleted. */
async function withoutItsFile() {
  const { desk, disk } = await troubledDesk();
  const first = desk.newId();
  await done(desk, HOLE, holeMade(), 'hole made');
  await done(desk, HOLE, [rowLogged(first, 0)], '0–1 logged');
  await desk.snapshot();
  const older = new TextDecoder().decode(await disk.readFile(FILE));
  const whole = desk.get(HOLE);
  if (whole === undefined) throw new Error('the hole was just made');
  await done(desk, HOLE, [rowLogged(desk.newId(), 1)], '1–2 logged');
  await done(desk, HOLE, [{ patch: ['rows', first], set: { remark: 'wet' } }], '0–1 amended');
  await disk.unlink(FILE);
  return { disk, older, whole, last: desk.get(HOLE) };
}

async function put(disk: Disk, path: string, text: string): Promise<void> {
  const file = await disk.create(path);
  await file.write(new TextEncoder().encode(text));
}

const codes = (desk: Desk): readonly string[] => desk.findings().map((finding) => finding.code);
const rowsOf = (desk: Desk): number => Object.keys(desk.get(HOLE)?.tables.rows ?? {}).length;

describe('a hole whose file was deleted', () => {
  it('is missing until someone decides, and what the journal still holds of it is named', async () => {
    const { disk } = await withoutItsFile();
    const desk = await open(disk);
    expect(desk.findings()[0]).toMatchObject({
      code: 'missing-file',
      place: { file: 'holes/ZQRC001.json' },
      excerpt: '1–2 logged; 0–1 amended',
    });
    expect(desk.missing()).toEqual([
      { name: HOLE, file: 'holes/ZQRC001.json', held: ['1–2 logged', '0–1 amended'] },
    ]);
    await desk.close();
  });

  it('is not called here by what is said of a console that was killed, nor on a take-over', async () => {
    const { disk } = await withoutItsFile();
    const desk = await open(disk);
    const said = desk.findings().find(({ code }) => code === 'stale-lock' || code === 'lock-taken');
    expect(said?.remedy).toContain(
      'Rows that it showed as saved may be missing: see what is said of holes/ZQRC001.json.',
    );
    expect(
      desk
        .findings()
        .map(({ remedy }) => remedy)
        .join(),
    ).not.toContain('Every row that it showed');
    await desk.close();
  });

  it('is let go knowingly: with a reason, recorded for good with who and when, and what the journal held is kept', async () => {
    const { disk } = await withoutItsFile();
    const desk = await open(disk);
    expect(await desk.letGo(HOLE, ' ')).toEqual({ ok: false, problem: 'give the reason to give it up' });
    expect(codes(desk)).toContain('missing-file');
    expect(await desk.letGo(HOLE, 'logged twice by mistake')).toEqual({
      ok: true,
      kept: 'journal/kept/holes-ZQRC001.json.let-go.1',
    });
    expect(codes(desk)).not.toContain('missing-file');
    expect(desk.missing()).toEqual([]);
    const kept = new TextDecoder().decode(
      await disk.readFile('/project/journal/kept/holes-ZQRC001.json.let-go.1'),
    );
    expect(kept).toContain('"by":"Ana Reyes","why":"logged twice by mistake"');
    expect(kept).toContain('1–2 logged');
    // Killed here, then opened and closed twice: it stays let go, and the record of it outlives every generation.
    for (let sitting = 0; sitting < 2; sitting += 1) {
      const again = await open(disk);
      expect(codes(again)).not.toContain('missing-file');
      await done(again, { kind: 'hole', id: `ZQRC01${sitting}` }, holeMade(`ZQRC01${sitting}`));
      await again.close();
    }
    const generations = (await disk.list('/project/journal')).filter((name) => name.endsWith('.jsonl'));
    expect(generations).toHaveLength(1);
    const journal = new TextDecoder().decode(await disk.readFile(`/project/journal/${generations[0]}`));
    expect(journal).toContain('"letGo":[{"document":{"kind":"hole","id":"ZQRC001"}');
    expect(journal).toContain('logged twice by mistake');
  });

  it('that was let go opens as it was where its file is put back after all, and is missing again where it goes again', async () => {
    const { disk, older, whole } = await withoutItsFile();
    const desk = await open(disk);
    await desk.letGo(HOLE, 'lost with the old laptop');
    await desk.close();
    await put(disk, FILE, older);
    const back = await open(disk);
    expect(back.get(HOLE)).toEqual(whole);
    await done(back, HOLE, [rowLogged(back.newId(), 1)]);
    await back.close();
    await disk.unlink(FILE);
    expect(codes(await open(disk))).toContain('missing-file');
  });

  it('that was let go makes way for a new one of its name', async () => {
    const { disk } = await withoutItsFile();
    const desk = await open(disk);
    await desk.letGo(HOLE, 'never drilled');
    await done(desk, HOLE, holeMade(), 'hole made again');
    // Killed before a file is written.
    const again = await open(disk);
    expect(codes(again)).not.toContain('missing-file');
    expect(again.get(HOLE)?.history.map((entry) => entry.what)).toEqual(['hole made again']);
    await again.close();
    expect(codes(await open(disk))).toEqual([]);
  });

  it('is not let go while its file is there, nor by a console that can only read', async () => {
    const { desk, disk } = await troubledDesk();
    await done(desk, HOLE, holeMade());
    expect(await desk.letGo(HOLE, 'by mistake')).toEqual({
      ok: false,
      problem: 'the file of ZQRC001 is not missing',
    });
    await desk.close();
    await disk.unlink(FILE);
    const reading = await openDesk({ ...faultOptions(disk, 60), readOnly: true });
    expect(reading.ok && (await reading.value.letGo(HOLE, 'by mistake')).ok).toBe(false);
    expect(reading.ok && reading.value.missing()).toEqual([
      { name: HOLE, file: 'holes/ZQRC001.json', held: [] },
    ]);
  });

  it('is restored from what the journal holds: rows that it holds whole stand, and the history says what is gone', async () => {
    const { disk } = await withoutItsFile();
    const desk = await open(disk);
    const restored = desk.restore(HOLE, holeMade());
    expect(restored.ok && (await restored.durable).ok).toBe(true);
    expect(rowsOf(desk)).toBe(1);
    expect(desk.get(HOLE)?.history.map((entry) => entry.what)).toEqual([
      'restored from the journal: 1 change; 1 more were to what is gone with the file',
    ]);
    expect(codes(desk)).not.toContain('missing-file');
    // Killed before a file is written, then closed.
    const again = await open(disk);
    expect(codes(again)).not.toContain('missing-file');
    expect(rowsOf(again)).toBe(1);
    await done(again, HOLE, [rowLogged(again.newId(), 5)]);
    await again.close();
    const last = await open(disk);
    expect(codes(last)).toEqual([]);
    expect(rowsOf(last)).toBe(2);
    expect(chainFault(last.get(HOLE)?.history ?? [])).toBeUndefined();
    expect(replay(last.get(HOLE)?.history ?? [])).toEqual(last.get(HOLE)?.tables);
  });

  it('is not restored from a journal that holds nothing of it', async () => {
    const { desk, disk } = await troubledDesk();
    await done(desk, HOLE, holeMade());
    await desk.close();
    await disk.unlink(FILE);
    const again = await open(disk);
    expect(again.restore(HOLE, holeMade())).toEqual({
      ok: false,
      problem: 'the journal holds nothing of ZQRC001',
    });
    expect(codes(again)).toEqual(['missing-file']);
  });

  it('comes back whole with a copy that is taken in: what the journal still holds is folded on', async () => {
    const { disk, whole, last } = await withoutItsFile();
    const desk = await open(disk);
    const taken = desk.receive(whole);
    expect(taken).toMatchObject({ ok: true, outcome: 'new' });
    expect(desk.get(HOLE)).toEqual(last);
    expect(codes(desk)).not.toContain('missing-file');
    // Killed before a file is written.
    const again = await open(disk);
    expect(again.get(HOLE)).toEqual(last);
    await again.close();
    expect(codes(await open(disk))).toEqual([]);
  });

  it('is not brought back by a copy that saved edits do not follow on from', async () => {
    const { disk, whole } = await withoutItsFile();
    const desk = await open(disk);
    const older = { ...whole, history: whole.history.slice(0, 1), tables: replay(whole.history.slice(0, 1)) };
    const taken = desk.receive(older);
    expect(taken.ok ? '' : taken.problem).toContain('saved edits that do not follow on from this copy');
    expect(codes(desk)).toContain('missing-file');
  });
});

describe('a copy laid over a file that is another document altogether', () => {
  it('is said, is kept byte for byte, and ours is kept', async () => {
    const { desk: other, disk: elsewhere } = await troubledDesk();
    await done(other, HOLE, holeMade('ANOTHER'));
    await other.close();
    const text = new TextDecoder().decode(await elsewhere.readFile(FILE));
    const { desk, disk } = await troubledDesk();
    await done(desk, HOLE, holeMade());
    await done(desk, HOLE, [rowLogged(desk.newId(), 0)]);
    await disk.makeFolder('/project/holes');
    await put(disk, FILE, text);
    const again = await open(disk);
    expect(rowsOf(again)).toBe(1);
    expect(codes(again)).toContain('copy-refused');
    expect(codes(again)).not.toContain('copies-merged');
    expect(again.findings().find((finding) => finding.code === 'copy-refused')?.problem).toContain(
      'it is another hole that goes by the name ZQRC001',
    );
    await again.close();
    const kept = await disk.readFile('/project/journal/kept/holes-ZQRC001.json.as-found.1');
    expect(new TextDecoder().decode(kept)).toBe(text);
  });
});

describe('a file whose tables were emptied', () => {
  it('is no edit: what its history makes stands, and the file as it was found is kept', async () => {
    const { desk, disk } = await troubledDesk();
    await done(desk, HOLE, holeMade());
    await done(desk, HOLE, [rowLogged(desk.newId(), 0)]);
    await desk.close();
    const whole = JSON.parse(new TextDecoder().decode(await disk.readFile(FILE))) as object;
    await disk.unlink(FILE);
    await put(disk, FILE, JSON.stringify({ ...whole, tables: {} }));
    const again = await open(disk);
    expect(rowsOf(again)).toBe(1);
    expect(codes(again)).toContain('copy-refused');
    await again.close();
    expect(await disk.list('/project/journal/kept')).toContain('holes-ZQRC001.json.as-found.1');
    const last = await open(disk);
    expect(codes(last)).toEqual([]);
    expect(rowsOf(last)).toBe(1);
  });
});
