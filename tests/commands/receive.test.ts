import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { receive } from '../../src/commands/camp.ts';
import { check } from '../../src/commands/check.ts';
import { questions } from '../../src/commands/questions.ts';
import { openDesk } from '../../src/desk/desk.ts';
import type { Outside } from '../../src/desk/outside.ts';
import type { Change } from '../../src/record/document.ts';

const SAMPLE = join(import.meta.dirname, '../../sample-projects/mulgara-bend');
const HOLE = { kind: 'hole', id: 'MBRC003' } as const;
const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

function copyOfSample(): string {
  const folder = mkdtempSync(join(tmpdir(), 'offsider-receive-'));
  folders.push(folder);
  cpSync(SAMPLE, folder, { recursive: true });
  return folder;
}

let seed = 0;
const clock = { nowMs: () => Date.UTC(2026, 2, 14, 2), offsetMin: () => 480 };
const random = (bytes: number) =>
  Uint8Array.from({ length: bytes }, () => Math.imul(++seed, 0x9e3779b1) >>> 24);

/** Edits the hole in a copy of the project, as its own console would. */
async function edit(folder: string, changes: readonly Change[]): Promise<void> {
  const opened = await openDesk({ folder, person: 'IFA', clock, random });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  const done = opened.value.submit({ what: 'edited', parts: [{ document: HOLE, changes }] });
  if (!done.ok) throw new Error(done.problem);
  await opened.value.close();
}

async function take(folder: string, ...files: string[]) {
  return takeWith({}, folder, ...files);
}

async function takeWith(more: { readonly mayClear?: boolean }, folder: string, ...files: string[]) {
  return run(receive, { folder, by: 'IFA', files, ...more });
}

/** Runs a command and gives its exit code with what it said. */
async function run<Asked>(command: (outside: Outside, asked: Asked) => Promise<number>, asked: Asked) {
  const said = { out: '', err: '' };
  const to = (key: 'out' | 'err') => {
    const write = (text: string) => {
      said[key] += text;
      return true;
    };
    return { write } as unknown as NodeJS.WriteStream;
  };
  const outside: Outside = {
    clock,
    random,
    env: {},
    stdin: process.stdin,
    stdout: to('out'),
    stderr: to('err'),
  };
  const code = await command(outside, asked);
  return { code, ...said };
}

const file = (folder: string) => join(folder, 'holes', 'MBRC003.json');
const rows = (folder: string): Record<string, { readonly cells: Record<string, unknown> }> =>
  JSON.parse(readFileSync(file(folder), 'utf8')).tables.rows;
const plan = (folder: string) =>
  (
    JSON.parse(readFileSync(file(folder), 'utf8')) as {
      tables: { plan: { plan: Record<string, unknown> }; questions?: object };
    }
  ).tables;

describe('receive', () => {
  it('takes a newer copy, and leaves ours alone where the copy is older or the same', async () => {
    const [ours, theirs] = [copyOfSample(), copyOfSample()];
    await edit(theirs, [{ patch: ['plan', 'plan'], set: { depthMm: 126_000 } }]);
    expect(await take(ours, file(theirs))).toMatchObject({
      code: 0,
      out: 'hole MBRC003: newer than ours, taken in: it changed the plan\n',
    });
    expect(plan(ours).plan.plan.depthMm).toBe(126_000);
    expect(await take(ours, file(theirs))).toMatchObject({
      code: 0,
      out: 'hole MBRC003: the same as ours\n',
    });
    await edit(ours, [{ patch: ['plan', 'plan'], set: { depthMm: 132_000 } }]);
    expect(await take(ours, file(theirs))).toMatchObject({
      code: 0,
      out: 'hole MBRC003: older than ours, nothing changed\n',
    });
    expect(plan(ours).plan.plan.depthMm).toBe(132_000);
  });

  it('merges a copy that went its own way: both changes stand', async () => {
    const [ours, theirs] = [copyOfSample(), copyOfSample()];
    await edit(ours, [{ patch: ['plan', 'plan'], set: { depthMm: 126_000 } }]);
    await edit(theirs, [{ patch: ['plan', 'plan'], set: { target: 'Cuckoo lode, as mapped' } }]);
    expect(await take(ours, file(theirs))).toMatchObject({
      code: 0,
      out: 'hole MBRC003: went its own way, merged with ours: it changed the plan\n',
    });
    expect(plan(ours).plan.plan).toMatchObject({ depthMm: 126_000, target: 'Cuckoo lode, as mapped' });
  });

  it('names what rows of a copy mean otherwise by our schema, once, and exits with 1', async () => {
    const [ours, theirs] = [copyOfSample(), copyOfSample()];
    const meaning = { list: 'rocks', code: 'ZZZ', label: 'a rock that our list has not', pair: 'zq' };
    await edit(theirs, [{ put: ['legendCodes', 'rocks ZZZ'], thing: meaning }]);
    const taken = await take(ours, file(theirs));
    expect(taken.code).toBe(1);
    expect(taken.out).toMatch(/newer than ours, taken in.*\n {2}by our schema: .*ZZZ/);
    expect(await take(ours, file(theirs))).toMatchObject({ code: 0 });
  });

  it('of a rod that both recorded keeps one, by number', async () => {
    const [ours, theirs] = [copyOfSample(), copyOfSample()];
    const rod = (id: string, minute: number): Change => ({
      put: ['rods', id],
      thing: { at: `2026-03-16T09:0${minute}:00+08:00`, rod: 40, depthMm: 240_000 },
    });
    await edit(ours, [rod('rig-1', 1)]);
    await edit(theirs, [rod('camp-1', 3)]);
    expect((await take(ours, file(theirs))).out).toContain('1 question to settle');
    const listed = await run(questions, { folder: ours, json: false });
    expect(listed.out).toContain(
      '1: MBRC003, rod 40, recorded twice: first rod 40 to 240 m at 2026-03-16 09:01',
    );
    const settled = await run(questions, { folder: ours, number: '1', chosen: 'first', json: false });
    expect(settled).toMatchObject({ code: 0, err: '' });
    expect(settled.out).toContain(
      'kept rod 40 to 240 m at 2026-03-16 09:01:00, no bags (IFA 2026-03-14 10:00); taken out rod 40',
    );
  });

  it('keeps a question where both changed the same cell: ours is kept, theirs is not lost, exit 1', async () => {
    const [ours, theirs] = [copyOfSample(), copyOfSample()];
    await edit(ours, [{ patch: ['plan', 'plan'], set: { depthMm: 126_000 } }]);
    await edit(theirs, [{ patch: ['plan', 'plan'], set: { depthMm: 138_000 } }]);
    const taken = await take(ours, file(theirs));
    expect(taken).toMatchObject({ code: 1 });
    expect(taken.out).toContain('1 question to settle');
    expect(plan(ours).plan.plan.depthMm).toBe(126_000);
    expect(Object.values(plan(ours).questions ?? {})).toMatchObject([
      { table: 'plan', field: 'depthMm', ours: 126_000, theirs: 138_000, state: 'open' },
    ]);
    const heard = await run(questions, { folder: ours, json: false });
    expect(heard).toEqual({
      code: 1,
      out: '1: MBRC003, plan, depth: ours 126 m (IFA 2026-03-14 10:00), theirs 138 m (IFA 2026-03-14 10:00)\n',
      err: '',
    });
    const unknown = await run(questions, { folder: ours, number: '2', chosen: 'theirs', json: false });
    expect(unknown.code).toBe(2);
    expect(unknown.err).toContain('no open question has that number');
    const half = await run(questions, { folder: ours, number: '1', json: false });
    expect(half.err).toContain('which one to keep is missing');
    const settled = await run(questions, { folder: ours, number: '1', chosen: 'theirs', json: false });
    expect(settled).toEqual({
      code: 0,
      out: 'MBRC003: settled plan, depth: theirs taken, 126 m → 138 m\nNo question is open.\n',
      err: '',
    });
    expect(plan(ours).plan.plan.depthMm).toBe(138_000);
    expect(await take(ours, file(theirs))).toMatchObject({ code: 0 });
  });

  it('refuses what is no hole of ours, naming place and remedy, and changes nothing', async () => {
    const ours = copyOfSample();
    const before = readFileSync(file(ours), 'utf8');
    const notOurs = join(ours, 'notes.json');
    writeFileSync(notOurs, '{"kind":"hole","id":"../evil"}');
    const missing = join(ours, 'none.json');
    const taken = await take(ours, notOurs, missing);
    expect(taken.code).toBe(1);
    expect(taken.err).toContain('it is not a hole, shift, dispatch or results of offsider');
    expect(taken.err).toContain('none.json');
    expect(readFileSync(file(ours), 'utf8')).toBe(before);
  });
});

describe('what a newer copy did', () => {
  const idsOf = (folder: string): readonly string[] =>
    Object.keys(JSON.parse(readFileSync(join(folder, 'holes/MBRC003.json'), 'utf8')).tables.rows);
  const rowsOf = (folder: string): number => idsOf(folder).length;

  it('is said in counts, table by table', async () => {
    const [here, there] = [copyOfSample(), copyOfSample()];
    const [first = '', second = ''] = idsOf(there);
    await edit(there, [{ remove: ['rows', first] }, { patch: ['rows', second], set: { remark: 'wet' } }]);
    const { code, out } = await take(here, join(there, 'holes/MBRC003.json'));
    expect(code).toBe(0);
    expect(out).toContain('hole MBRC003: newer than ours, taken in: it cleared 1 row, changed 1 row');
  });

  it('is asked about where it takes a void out of the log, which is named; with --may-clear it is said', async () => {
    const [ours, theirs] = [copyOfSample(), copyOfSample()];
    const [id] = Object.keys(rows(ours)).slice(-1);
    const all = rows(ours)[id ?? '']?.cells;
    const rock = (code: string): Change => ({
      patch: ['rows', id ?? ''],
      set: { cells: { ...all, rock: { code } } },
    });
    await edit(ours, [rock('VOI')]);
    await take(theirs, file(ours));
    await edit(theirs, [rock('BAS')]);
    const held = await take(ours, file(theirs));
    expect(held.code).toBe(1);
    expect(held.err).toMatch(/it takes a danger out of the log: \d+–\d+ void or old workings \(void\)/);
    expect(rows(ours)[id ?? '']?.cells.rock).toEqual({ code: 'VOI' });
    const taken = await takeWith({ mayClear: true }, ours, file(theirs));
    expect(taken.out).toMatch(/it takes a danger out of the log: \d+–\d+ void or old workings \(void\)/);
  });

  it('is asked about where it takes much away: nothing is taken in until someone says that it may', async () => {
    const [here, there] = [copyOfSample(), copyOfSample()];
    const before = rowsOf(here);
    await edit(
      there,
      idsOf(there)
        .slice(0, 40)
        .map((id) => ({ remove: ['rows', id] })),
    );
    const file = join(there, 'holes/MBRC003.json');
    const asked = await take(here, file);
    expect(asked.code).toBe(1);
    expect(asked.err).toContain(
      'it takes away of ours what someone has to agree to: it cleared 40 rows (IFA 2026-03-14 10:00: edited)',
    );
    expect(asked.err).toContain('--may-clear');
    expect(rowsOf(here)).toBe(before);
    const taken = await takeWith({ mayClear: true }, here, file);
    expect(taken.out).toContain('newer than ours, taken in: it cleared 40 rows');
    expect(rowsOf(here)).toBe(before - 40);
  });

  it('is not asked about where it is the half of a doubled rod that the other copy settled', async () => {
    const [here, there] = [copyOfSample(), copyOfSample()];
    const side = (name: string, minute: number): readonly Change[] => [
      {
        put: ['rods', `${name}-1`],
        thing: { at: `2026-03-16T09:0${minute}:00+08:00`, rod: 40, depthMm: 240_000 },
      },
      ...[1, 2, 3, 4, 5, 6].map(
        (metre): Change => ({
          put: ['bags', `${name}-b${metre}`],
          thing: {
            number: `MB00900${metre}`,
            kind: 'primary',
            fromMm: 233_000 + metre * 1000,
            toMm: 234_000 + metre * 1000,
            rod: `${name}-1`,
          },
        }),
      ),
    ];
    await edit(here, side('rig', 1));
    await edit(there, side('camp', 3));
    await take(there, file(here));
    const found = await run(check, { folder: there, hole: 'MBRC003', json: true });
    const bags = (JSON.parse(found.out) as readonly { problem: string; remedy: string }[]).filter(
      ({ problem, remedy }) => /MB00900\d/.test(problem) && /both hold|unused number/.test(problem + remedy),
    );
    expect(bags).toEqual([]);
    expect(found.out).toContain('Relabel no bag for it');
    const settled = await run(questions, { folder: there, number: '1', chosen: 'second', json: false });
    expect(settled.out).toContain('kept rod 40 to 240 m at 2026-03-16 09:03');
    const taken = await take(here, file(there));
    expect(taken).toMatchObject({ code: 0, err: '' });
    expect(taken.out).toContain('took out 1 rod, took out 6 bags');
  });
});
