import { cpSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { takeIn } from '../../src/desk/take-in.ts';
import { heldBy } from '../../src/record/ancestry.ts';
import { apply } from '../../src/record/apply.ts';
import { chainFault, replay } from '../../src/record/chain.ts';
import { type Change, type Deed, type Document, emptyDocument } from '../../src/record/document.ts';
import { runs } from '../support/long-run.ts';
import { done, newProject, opened, projectWithHole } from './support/project.ts';
import { HOLE, holeMade, rowLogged, seededRandom } from './support/values.ts';

describe('a copy that comes back', () => {
  it('newer is taken, older and same change nothing, and what was taken is still there after closing', async () => {
    const { folder, hole } = await projectWithHole();
    const copy = newProject();
    cpSync(folder, copy, { recursive: true });
    const there = await opened(copy, { random: seededRandom(50) });
    await done(there, HOLE, [rowLogged(there.newId(), 3)]);
    await there.close();
    const newer = there.get(HOLE) as Document;
    const here = await opened(folder);
    expect(here.receive(hole)).toMatchObject({ ok: true, outcome: 'same' });
    const taken = here.receive(newer);
    expect(taken).toMatchObject({ ok: true, outcome: 'newer', questions: 0 });
    expect(taken.ok && (await taken.durable).ok).toBe(true);
    expect(here.receive(hole)).toMatchObject({ ok: true, outcome: 'older' });
    expect(here.get(HOLE)).toEqual(newer);
    await here.close();
    const again = await opened(folder);
    expect(again.findings()).toEqual([]);
    expect(again.get(HOLE)).toEqual(newer);
    await again.close();
  });

  it('to a folder that was put back whole to an earlier day is taken in, and none of its ids is given again', async () => {
    const { folder } = await projectWithHole(2);
    const backup = newProject();
    cpSync(folder, backup, { recursive: true });
    const later = await opened(folder);
    for (const metre of [2, 3]) await done(later, HOLE, [rowLogged(later.newId(), metre)]);
    await later.close();
    const copy = later.get(HOLE) as Document;
    for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true });
    cpSync(backup, folder, { recursive: true });
    const here = await opened(folder);
    expect(here.receive(copy)).toMatchObject({ ok: true, outcome: 'newer' });
    for (const metre of [4, 5]) await done(here, HOLE, [rowLogged(here.newId(), metre)]);
    expect(Object.keys(here.get(HOLE)?.tables.rows ?? {})).toHaveLength(6);
    const edits = here.get(HOLE)?.history.map(({ edit }) => edit) ?? [];
    expect(new Set(edits).size).toBe(edits.length);
    await here.close();
  });

  it('of a hole that is not here is new', async () => {
    const { hole } = await projectWithHole();
    const folder = newProject();
    const here = await opened(folder);
    expect(here.receive(hole)).toMatchObject({ ok: true, outcome: 'new' });
    await here.close();
    const again = await opened(folder);
    expect(again.get(HOLE)).toEqual(hole);
    await again.close();
  });

  it.each([
    [
      { id: '../../ZQRC001' },
      '"../../ZQRC001" can\'t be an id: only capitals, digits, _ and - are allowed, and it starts with a capital or a digit',
    ],
    [{ id: 'con' }, '"con" can\'t be an id: con is a name that some computers keep for devices'],
    [{ kind: 'constructor' }, 'no files are kept for documents of kind constructor'],
  ])('that names itself so that no file of ours could hold it is refused: %j', async (name, problem) => {
    const { hole } = await projectWithHole(1);
    const here = await opened(newProject());
    expect(here.receive({ ...hole, ...name })).toEqual({ ok: false, problem });
    expect(here.documents().size).toBe(0);
    await here.close();
  });

  it('of another hole by the same name is refused, as is one whose history was changed', async () => {
    const { folder, hole } = await projectWithHole();
    const stranger = await opened(newProject(), { random: seededRandom(51) });
    await done(stranger, HOLE, holeMade());
    const here = await opened(folder);
    expect(here.receive(stranger.get(HOLE) as Document)).toEqual({
      ok: false,
      problem: 'it is another hole that goes by the name ZQRC001',
    });
    const history = hole.history.map((entry) => ({ ...entry, by: 'No one' }));
    expect(here.receive({ ...hole, history })).toMatchObject({ ok: false });
    expect(here.get(HOLE)).toEqual(hole);
    await stranger.close();
    await here.close();
  });

  it('edited outside and taken in twice is one edit: the second time it changes nothing and asks nothing', async () => {
    const { folder, hole } = await projectWithHole();
    const [id, row] = Object.entries(hole.tables.rows ?? {})[1] ?? [];
    const rows = { ...hole.tables.rows, [String(id)]: { ...row, remark: 'mailed back by camp' } };
    const edited = { ...hole, tables: { ...hole.tables, rows } } as Document;
    const clean = await opened(folder);
    expect(clean.receive(edited)).toMatchObject({ ok: true, outcome: 'newer', questions: 0 });
    const history = clean.get(HOLE)?.history;
    expect(clean.receive(edited)).toMatchObject({ ok: true, outcome: 'same' });
    await done(clean, HOLE, [{ patch: ['rows', String(id)], set: { remark: 'changed here since' } }]);
    expect(clean.receive(edited)).toMatchObject({ ok: true, outcome: 'older', questions: 0 });
    expect(clean.get(HOLE)?.history.slice(0, -1)).toEqual(history);
    await clean.close();
  });

  it('edited outside and merged is not asked about again', async () => {
    const { folder, hole } = await projectWithHole();
    const [id, row] = Object.entries(hole.tables.rows ?? {})[1] ?? [];
    const rows = { ...hole.tables.rows, [String(id)]: { ...row, remark: 'theirs' } };
    const edited = { ...hole, tables: { ...hole.tables, rows } } as Document;
    const here = await opened(folder);
    await done(here, HOLE, [{ patch: ['rows', String(id)], set: { remark: 'ours' } }]);
    expect(here.receive(edited)).toMatchObject({ ok: true, outcome: 'merged', questions: 1 });
    expect(here.receive(edited)).toMatchObject({ ok: true, outcome: 'older', questions: 0 });
    expect(Object.keys(here.get(HOLE)?.tables.questions ?? {})).toHaveLength(1);
    await here.close();
  });

  it('sent to and fro is merged there and taken here, and never asked about again', async () => {
    const { folder } = await projectWithHole();
    const copy = newProject();
    cpSync(folder, copy, { recursive: true });
    const here = await opened(folder);
    const there = await opened(copy, { random: seededRandom(52) });
    await done(here, HOLE, [rowLogged(here.newId(), 3)]);
    await done(there, HOLE, [rowLogged(there.newId(), 4)]);
    expect(there.receive(here.get(HOLE) as Document)).toMatchObject({
      ok: true,
      outcome: 'merged',
      questions: 0,
    });
    const back = here.receive(there.get(HOLE) as Document);
    expect(back).toMatchObject({ ok: true, outcome: 'newer' });
    expect(here.get(HOLE)).toEqual(there.get(HOLE));
    expect(there.receive(here.get(HOLE) as Document)).toMatchObject({ outcome: 'same' });
    await here.close();
    await there.close();
    const again = await opened(folder);
    expect(again.findings()).toEqual([]);
    expect(again.get(HOLE)).toEqual(there.get(HOLE));
    await again.close();
  });

  it('laid over our file while the journal held rows of ours is merged at the next opening', async () => {
    const { folder } = await projectWithHole();
    const copy = newProject();
    cpSync(folder, copy, { recursive: true });
    const there = await opened(copy, { random: seededRandom(53) });
    await done(there, HOLE, [rowLogged(there.newId(), 4)]);
    await there.close();
    const here = await opened(folder, { idleMs: 100_000 });
    await done(here, HOLE, [rowLogged(here.newId(), 3)]);
    const left = newProject();
    cpSync(folder, left, { recursive: true });
    await here.close();
    writeFileSync(join(left, 'holes/ZQRC001.json'), readFileSync(join(copy, 'holes/ZQRC001.json')));
    const again = await opened(left, { takeOver: true, random: seededRandom(54) });
    expect(again.findings().map((finding) => finding.code)).toEqual([
      'copies-merged',
      'lock-taken',
      'journal-ahead',
    ]);
    expect(Object.keys(again.get(HOLE)?.tables.rows ?? {})).toHaveLength(5);
    await again.close();
  });
});

/** One random edit: a row put, a remark set or taken out, a row removed. The number chooses among what is there. */
interface Act {
  readonly kind: 'put' | 'remark' | 'clear' | 'remove';
  readonly pick: number;
}
const act: fc.Arbitrary<Act> = fc.record({
  kind: fc.constantFrom('put', 'put', 'remark', 'clear', 'remove'),
  pick: fc.nat(20),
});

function changeOf(document: Document, { kind, pick }: Act, id: string): Change | undefined {
  const rows = Object.keys(document.tables.rows ?? {});
  const row = rows[pick % Math.max(1, rows.length)];
  if (kind === 'put' || row === undefined) return rowLogged(id, pick);
  if (kind === 'remark') return { patch: ['rows', row], set: { remark: `said ${id}` } };
  return kind === 'clear' ? { patch: ['rows', row], unset: ['remark'] } : { remove: ['rows', row] };
}

function edited(start: Document, acts: readonly Act[], replica: string): Document {
  return acts.reduce((document, each, index) => {
    const id = `${replica}-${index}`;
    const change = changeOf(document, each, id);
    const applied =
      change === undefined ? undefined : apply(document, deed(`${replica}-e${index}`), [change]);
    return applied?.ok === true ? applied.document : document;
  }, start);
}

const deed = (edit: string): Deed => ({
  edit,
  at: '2026-03-14T08:00:00+08:00',
  by: 'Ana Reyes',
  what: 'edited',
});

it('merging two copies edited apart loses nothing: every entry of both is held, and every cell is in the tables or asked about', () => {
  fc.assert(
    fc.property(
      fc.array(act, { maxLength: 6 }),
      fc.array(act, { maxLength: 8 }),
      fc.array(act, { maxLength: 8 }),
      (before, a, b) => {
        const made = apply(emptyDocument(HOLE), deed('base-0'), holeMade());
        if (!made.ok) throw new Error(made.problem);
        const base = edited(made.document, before, 'base');
        const ours = edited(base, a, 'ours');
        const theirs = edited(base, b, 'theirs');
        const taken = takeIn(ours, theirs, () => deed('merge-1'));
        if (!taken.ok) throw new Error(taken.problem);
        const { document, questions } = taken;
        expect(chainFault(document.history)).toBeUndefined();
        expect(replay(document.history)).toEqual(document.tables);
        const held = heldBy(document.history);
        for (const entry of [...ours.history, ...theirs.history]) expect(held.has(entry.hash)).toBe(true);
        for (const [side, name] of [
          [ours, 'ours'],
          [theirs, 'theirs'],
        ] as const) {
          for (const [id, row] of Object.entries(side.tables.rows ?? {})) {
            const stands = JSON.stringify(document.tables.rows?.[id]) === JSON.stringify(row);
            const known = JSON.stringify(base.tables.rows?.[id]) === JSON.stringify(row);
            const asked = questions.some((question) => question.id === id);
            const merged = document.tables.rows?.[id]?.remark === row.remark;
            expect(stands || known || asked || merged, `${name} ${id}`).toBe(true);
          }
        }
      },
    ),
    { numRuns: runs(300) },
  );
});
