import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openDesk } from '../../src/desk/desk.ts';
import { FORMAT } from '../../src/files/document-file.ts';
import { deskOptions, done, newProject, opened, projectWithHole } from './support/project.ts';
import { HOLE, holeMade, rowLogged, seededRandom } from './support/values.ts';

const holeFile = (folder: string): string => join(folder, 'holes/ZQRC001.json');
const generations = (folder: string): readonly string[] =>
  readdirSync(join(folder, 'journal')).filter((name) => name.endsWith('.jsonl'));

/** Every file below a folder with its bytes, to show that nothing was changed. */
function everything(folder: string): Readonly<Record<string, string>> {
  const names = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) =>
    entry.isFile(),
  );
  return Object.fromEntries(
    names.map((entry) => {
      const path = join(entry.parentPath, entry.name);
      return [path, readFileSync(path, 'latin1')];
    }),
  );
}

/** A project whose console was killed: the journal holds rows that no file holds. */
async function killedProject(): Promise<string> {
  const folder = newProject();
  const desk = await opened(folder, { idleMs: 100_000 });
  await done(desk, HOLE, holeMade());
  for (const metre of [0, 1]) await done(desk, HOLE, [rowLogged(desk.newId(), metre)]);
  const left = `${folder}-left`;
  cpSync(folder, left, { recursive: true });
  await desk.close();
  rmSync(folder, { recursive: true });
  cpSync(left, folder, { recursive: true });
  rmSync(left, { recursive: true });
  return folder;
}

const gone = { host: 'rig-laptop', process: 2, boot: '', isRunning: () => false };
const onThisLaptop = { machine: { ...gone, process: 1 } };

describe('opening a folder', () => {
  it('that holds no project is refused and makes nothing in it', async () => {
    const folder = newProject();
    rmSync(join(folder, 'project.json'));
    const result = await openDesk(deskOptions(folder));
    expect(result.ok ? [] : result.findings.map((finding) => [finding.code, finding.problem])).toEqual([
      ['no-project', 'no project.json in it'],
    ]);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('to read only changes nothing in it and shows what the journal holds', async () => {
    const folder = await killedProject();
    const before = everything(folder);
    const desk = await opened(folder, { readOnly: true });
    expect(Object.keys(desk.get(HOLE)?.tables.rows ?? {})).toHaveLength(2);
    expect(desk.submit({ what: 'x', parts: [] }).ok).toBe(false);
    expect(desk.health().state).toBe('read only');
    await desk.close();
    expect(everything(folder)).toEqual(before);
  });
});

describe('what is found on opening', () => {
  it('a torn tail: set aside, named, and nothing that was saved is missing', async () => {
    const folder = await killedProject();
    const [file = ''] = generations(folder);
    appendFileSync(join(folder, 'journal', file), '{"crc":"12345678","seq":4,"sa');
    const desk = await opened(folder, { takeOver: true });
    expect(desk.findings().map((finding) => finding.code)).toEqual([
      'torn-tail',
      'lock-taken',
      'journal-ahead',
    ]);
    expect(desk.findings()[0]?.place).toEqual({ file: 'journal/000001.jsonl', line: 5 });
    expect(Object.keys(desk.get(HOLE)?.tables.rows ?? {})).toHaveLength(2);
    expect(readFileSync(join(folder, 'journal/kept/journal-000001.jsonl.torn-line-5.1'), 'utf8')).toBe(
      '{"crc":"12345678","seq":4,"sa',
    );
    await desk.close();
  });

  it('a damaged line among saved ones: loud, with its place, and its file is kept', async () => {
    const folder = await killedProject();
    const [file = ''] = generations(folder);
    const path = join(folder, 'journal', file);
    writeFileSync(path, readFileSync(path, 'utf8').replace('"fromMm":0', '"fromMm":7'));
    const desk = await opened(folder, { takeOver: true });
    const [damage] = desk.findings();
    expect(damage).toMatchObject({
      code: 'damaged-journal',
      severity: 'fault',
      place: { file: 'journal/000001.jsonl', line: 3 },
    });
    expect(desk.closed.get('hole/ZQRC001')).toBeDefined();
    const refused = desk.submit({ what: 'row', parts: [{ document: HOLE, changes: [rowLogged('x-1', 5)] }] });
    expect(refused.ok).toBe(false);
    await desk.close();
    expect(readFileSync(path, 'utf8')).toContain('"fromMm":7');
  });

  it('a hole edited outside: recorded as such, and undone with nothing lost', async () => {
    const { folder, hole } = await projectWithHole();
    const text = readFileSync(holeFile(folder), 'utf8').replace(
      '"state": "drilling"',
      '"state": "suspended"',
    );
    writeFileSync(holeFile(folder), text);
    const desk = await opened(folder);
    expect(desk.findings().map((finding) => finding.code)).toEqual(['edited-outside']);
    expect(desk.get(HOLE)?.tables.hole?.hole?.state).toBe('suspended');
    expect(desk.get(HOLE)?.history.at(-1)).toMatchObject({ outside: true, what: 'edited outside offsider' });
    expect(desk.undo(HOLE)).toMatchObject({ ok: true, edit: { what: 'undo: edited outside offsider' } });
    expect(desk.get(HOLE)?.tables.hole?.hole?.state).toBe('drilling');
    await desk.close();
    expect(readFileSync(join(folder, 'journal/kept/holes-ZQRC001.json.as-found.1'), 'utf8')).toBe(text);
    const again = await opened(folder);
    expect(again.findings()).toEqual([]);
    expect(again.get(HOLE)?.history).toHaveLength(hole.history.length + 2);
    await again.close();
  });

  it('a hole edited outside while the journal held rows of it: both are there', async () => {
    const folder = await killedProject();
    const desk = await opened(folder, { takeOver: true });
    await desk.close();
    const file = readFileSync(holeFile(folder), 'utf8');
    const second = await opened(folder, { idleMs: 100_000 });
    await done(second, HOLE, [rowLogged(second.newId(), 2)]);
    const left = `${folder}-left`;
    cpSync(folder, left, { recursive: true });
    await second.close();
    writeFileSync(holeFile(left), file.replace('"state": "drilling"', '"state": "suspended"'));
    const third = await opened(left, { takeOver: true });
    expect(third.get(HOLE)?.tables.hole?.hole?.state).toBe('suspended');
    expect(Object.keys(third.get(HOLE)?.tables.rows ?? {})).toHaveLength(3);
    await third.close();
    rmSync(left, { recursive: true });
  });

  it('a history that was changed: shown, named by its entry, and not to be written', async () => {
    const { folder } = await projectWithHole();
    const text = readFileSync(holeFile(folder), 'utf8').replaceAll('Ana Reyes', 'No one');
    writeFileSync(holeFile(folder), text);
    const desk = await opened(folder);
    expect(desk.findings()[0]).toMatchObject({
      code: 'broken-history',
      place: { file: 'holes/ZQRC001.json', field: 'history.0' },
    });
    expect(desk.submit({ what: 'row', parts: [{ document: HOLE, changes: [rowLogged('x-1', 5)] }] })).toEqual(
      {
        ok: false,
        problem: "ZQRC001 can't be written: its history has been changed",
      },
    );
    await desk.close();
    expect(readFileSync(holeFile(folder), 'utf8')).toBe(text);
  });

  it('a hole of a newer format: refused, and left as it is', async () => {
    const { folder } = await projectWithHole();
    const text = readFileSync(holeFile(folder), 'utf8').replace('"format": 1', '"format": 99');
    writeFileSync(holeFile(folder), text);
    const desk = await opened(folder);
    expect(desk.findings()[0]).toMatchObject({
      code: 'newer-format',
      problem: `it has format 99; this offsider reads up to ${FORMAT}`,
    });
    expect(desk.get(HOLE)).toBeUndefined();
    expect(desk.submit({ what: 'hole made', parts: [{ document: HOLE, changes: holeMade() }] }).ok).toBe(
      false,
    );
    await desk.close();
    expect(readFileSync(holeFile(folder), 'utf8')).toBe(text);
  });

  it('a hole of an older format: brought up to date, the original kept', async () => {
    const { folder, hole } = await projectWithHole();
    const old = readFileSync(holeFile(folder), 'utf8')
      .replace('"format": 1', '"format": 0')
      .replace('"id"', '"holeId"');
    writeFileSync(holeFile(folder), old);
    const migrations = [
      {
        kind: 'hole',
        from: 0,
        upgrade: ({
          holeId,
          ...rest
        }: {
          readonly [key: string]: import('../../src/record/json.ts').Json;
        }) => ({
          ...rest,
          id: holeId ?? '',
        }),
      },
    ];
    const desk = await opened(folder, { migrations });
    expect(desk.findings().map((finding) => finding.code)).toEqual(['older-format']);
    expect(desk.get(HOLE)).toEqual(hole);
    await desk.close();
    expect(readFileSync(holeFile(folder), 'utf8')).toContain('"format": 1');
    expect(readFileSync(join(folder, 'journal/kept/holes-ZQRC001.json.format-0.1'), 'utf8')).toBe(old);
  });

  it('a hole that is not JSON, its making still in the journal: rebuilt, the broken file kept', async () => {
    const folder = await killedProject();
    mkdirSync(join(folder, 'holes'), { recursive: true });
    writeFileSync(holeFile(folder), '{"broken');
    const desk = await opened(folder, { takeOver: true });
    expect(desk.findings().map((finding) => finding.code)).toEqual([
      'not-json',
      'rebuilt-from-journal',
      'lock-taken',
    ]);
    expect(Object.keys(desk.get(HOLE)?.tables.rows ?? {})).toHaveLength(2);
    await desk.close();
    expect(readFileSync(join(folder, 'journal/kept/holes-ZQRC001.json.unreadable.1'), 'utf8')).toBe(
      '{"broken',
    );
    const again = await opened(folder);
    expect(again.findings()).toEqual([]);
    await again.close();
  });

  it('a hole that is not JSON and is not in the journal: named with line and column, and never written over', async () => {
    const { folder } = await projectWithHole();
    const broken = readFileSync(holeFile(folder), 'utf8').replace('"kind": "hole",', '"kind": "hole"');
    writeFileSync(holeFile(folder), broken);
    const desk = await opened(folder);
    expect(desk.findings()[0]).toMatchObject({
      code: 'not-json',
      place: { file: 'holes/ZQRC001.json', line: 5, column: 3 },
    });
    expect(desk.submit({ what: 'hole made', parts: [{ document: HOLE, changes: holeMade() }] }).ok).toBe(
      false,
    );
    await desk.close();
    expect(readFileSync(holeFile(folder), 'utf8')).toBe(broken);
  });

  it('a hole that was there and is gone: an error, not a new hole, until it is put back', async () => {
    const { folder, hole } = await projectWithHole();
    const text = readFileSync(holeFile(folder), 'utf8');
    rmSync(holeFile(folder));
    for (let sitting = 0; sitting < 2; sitting += 1) {
      const desk = await opened(folder);
      expect(desk.findings()[0]).toMatchObject({
        code: 'missing-file',
        place: { file: 'holes/ZQRC001.json' },
      });
      const other = { kind: 'hole', id: 'ZQRC002' };
      if (sitting === 0) await done(desk, other, holeMade('ZQRC002'));
      expect(desk.submit({ what: 'hole made', parts: [{ document: HOLE, changes: holeMade() }] }).ok).toBe(
        false,
      );
      await desk.close();
    }
    writeFileSync(holeFile(folder), text);
    const desk = await opened(folder);
    expect(desk.findings()).toEqual([]);
    expect(desk.get(HOLE)).toEqual(hole);
    await desk.close();
  });

  it('an older copy put over a hole while the journal holds later rows, and none of what it lacks: named, shown, not written', async () => {
    const folder = await killedProject();
    const desk = await opened(folder, { takeOver: true, idleMs: 100_000 });
    await desk.snapshot();
    const older = readFileSync(holeFile(folder), 'utf8');
    await done(desk, HOLE, [rowLogged(desk.newId(), 2)]);
    await desk.snapshot();
    await done(desk, HOLE, [rowLogged(desk.newId(), 3)]);
    const left = `${folder}-left`;
    cpSync(folder, left, { recursive: true });
    await desk.close();
    writeFileSync(holeFile(left), older);
    for (const name of readdirSync(join(left, 'journal')))
      if (name.endsWith('.past')) rmSync(join(left, 'journal', name));
    const again = await opened(left, { takeOver: true });
    expect(again.findings()[0]).toMatchObject({ code: 'journal-misfit', severity: 'fault' });
    expect(
      again.submit({ what: 'row', parts: [{ document: HOLE, changes: [rowLogged('x-1', 9)] }] }).ok,
    ).toBe(false);
    await again.close();
    expect(readFileSync(holeFile(left), 'utf8')).toBe(older);
    rmSync(left, { recursive: true });
  });

  it('files that are none of the project: named and left alone', async () => {
    const { folder } = await projectWithHole();
    for (const name of ['ZQRC001 (copy).json', 'zqrc009.json', 'CON.json', 'notes.txt'])
      writeFileSync(join(folder, 'holes', name), '{}');
    const desk = await opened(folder);
    expect(desk.findings().map((finding) => [finding.code, finding.place.file])).toEqual([
      ['foreign-file', 'holes/CON.json'],
      ['foreign-file', 'holes/ZQRC001 (copy).json'],
      ['foreign-file', 'holes/notes.txt'],
      ['foreign-file', 'holes/zqrc009.json'],
    ]);
    await desk.close();
    expect(existsSync(join(folder, 'holes/notes.txt'))).toBe(true);
  });

  it('a hole file under the name of another hole: refused', async () => {
    const { folder } = await projectWithHole();
    cpSync(holeFile(folder), join(folder, 'holes/ZQRC007.json'));
    const desk = await opened(folder);
    expect(desk.findings()[0]).toMatchObject({
      code: 'wrong-shape',
      problem: 'the file says it is hole ZQRC001, its name says hole ZQRC007',
    });
    await desk.close();
  });

  it('a link that leads out of the project: not followed', async () => {
    const { folder } = await projectWithHole();
    const outside = newProject();
    writeFileSync(join(outside, 'secret.json'), '{}');
    symlinkSync(join(outside, 'secret.json'), join(folder, 'holes/ZQRC008.json'));
    const desk = await opened(folder);
    expect(desk.findings()[0]).toMatchObject({ code: 'link-outside', place: { file: 'holes/ZQRC008.json' } });
    await desk.close();
  });

  it('what an interrupted write left behind: cleared away', async () => {
    const { folder } = await projectWithHole();
    writeFileSync(join(folder, 'holes/.ZQRC001.json.00ff.tmp'), '{"half');
    const desk = await opened(folder);
    expect(desk.findings()).toEqual([]);
    await desk.close();
    expect(readdirSync(join(folder, 'holes'))).toEqual(['ZQRC001.json']);
  });
});

describe('two consoles', () => {
  it('are not let at one project: the second is told who holds it', async () => {
    const folder = newProject();
    const first = await opened(folder, { machine: { ...gone, process: 1, isRunning: () => true } });
    const second = await openDesk(
      deskOptions(folder, { person: 'Ben Ito', machine: { ...gone, isRunning: () => true } }),
    );
    expect(second.ok ? '' : second.findings[0]?.problem).toBe(
      'Ana Reyes has this project open on rig-laptop since 2026-03-14T08:00:01+08:00',
    );
    await done(first, HOLE, holeMade());
    await first.close();
  });

  it('a lock of another computer is not taken over unasked, whatever runs here', async () => {
    const folder = newProject();
    const first = await opened(folder, { machine: { ...gone, host: 'camp-laptop' } });
    expect((await openDesk(deskOptions(folder, onThisLaptop))).ok).toBe(false);
    await first.close();
  });

  it.each([
    ['whose process is gone', { ...gone, process: 1 }, gone],
    [
      'from before the computer was started again',
      { ...gone, process: 1, boot: 'a' },
      { ...gone, boot: 'b', isRunning: () => true },
    ],
  ])(
    'a lock %s is taken over with a note, and the one that had it goes read only',
    async (_, holder, next) => {
      const folder = newProject();
      const first = await opened(folder, { machine: holder });
      await done(first, HOLE, holeMade());
      const second = await opened(folder, { machine: next, person: 'Ben Ito', random: seededRandom(8) });
      expect(second.findings().map((finding) => finding.code)).toEqual(['stale-lock', 'journal-ahead']);
      await done(second, HOLE, [rowLogged(second.newId(), 0)]);
      const late = await done(first, HOLE, [rowLogged('late-1', 7)]);
      expect(late).toEqual({ ok: false, problem: 'Ben Ito on rig-laptop has taken this project over' });
      expect(first.health()).toMatchObject({ state: 'read only', unsafeEdits: 1 });
      expect(first.submit({ what: 'x', parts: [] })).toMatchObject({ ok: false });
      await first.close({ abandon: true });
      await done(second, HOLE, [rowLogged(second.newId(), 1)]);
      await second.close();
      const third = await opened(folder);
      expect(Object.values(third.get(HOLE)?.tables.rows ?? {}).map((row) => row.fromMm)).toEqual([0, 1000]);
      await third.close();
    },
  );

  it('a copy of the project folder gives ids of its own', async () => {
    const { folder } = await projectWithHole();
    const copy = newProject();
    cpSync(folder, copy, { recursive: true });
    const [here, there] = [
      await opened(folder),
      await opened(copy, { random: (bytes) => new Uint8Array(bytes).fill(77) }),
    ];
    expect(here.newId().split('-')[0]).not.toBe(there.newId().split('-')[0]);
    await here.close();
    await there.close();
  });
});
