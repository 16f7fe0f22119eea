import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { apply } from '../../src/record/apply.ts';
import type { Change } from '../../src/record/document.ts';
import { done, newProject, opened, projectWithHole } from './support/project.ts';
import { HOLE, holeMade, rowLogged } from './support/values.ts';

describe('a desk', () => {
  it('takes an edit at once, says when it is on the medium, and shows it again after closing', async () => {
    const folder = newProject();
    const desk = await opened(folder);
    const made = desk.submit({ what: 'hole made', parts: [{ document: HOLE, changes: holeMade() }] });
    expect(desk.get(HOLE)?.tables.hole?.hole).toMatchObject({ name: 'ZQRC001' });
    expect(desk.health()).toMatchObject({ state: 'saving', unsafeEdits: 1 });
    expect(made.ok && (await made.durable).ok).toBe(true);
    expect(desk.health()).toMatchObject({ state: 'safe', unsafeEdits: 0 });
    expect(await desk.close()).toEqual({ ok: true });
    const again = await opened(folder);
    expect(again.findings()).toEqual([]);
    expect(again.get(HOLE)).toEqual(desk.get(HOLE));
    await again.close();
  });

  it('writes a hole file that a person reads well: one thing a line, one entry of the history a line', async () => {
    const { folder } = await projectWithHole(1);
    const lines = readFileSync(join(folder, 'holes/ZQRC001.json'), 'utf8').split('\n');
    expect(lines.slice(0, 13)).toEqual([
      '{',
      '  "$schema": "../schemas/hole.schema.json",',
      '  "format": 1,',
      '  "kind": "hole",',
      '  "id": "ZQRC001",',
      '  "journal": { "generation": 1, "sequence": 2 },',
      '  "tables": {',
      '    "hole": {',
      '      "hole": { "name": "ZQRC001", "state": "drilling", "logFromMm": 0, "intervalMm": 1000, "rodMm": 6000, "firstRodOffsetMm": 0 }',
      '    },',
      '    "rows": {',
      expect.stringMatching(
        /^ {6}"[a-z0-9]{6}-2": \{ "fromMm": 0, "toMm": 1000, "cells": \{ "pyrite": \{ "percent": 2 \} \} \}$/,
      ),
      '    }',
    ]);
    expect(lines).toHaveLength(20);
  });

  it('says when edits were saved by the clock of the computer, in the order in which they were made', async () => {
    const desk = await opened(newProject());
    const all = [holeMade(), ...[0, 1, 2, 3].map((metre) => [rowLogged(desk.newId(), metre)])].map(
      (changes) => done(desk, HOLE, changes),
    );
    const saved = await Promise.all(all);
    expect(saved.every((each) => each.ok)).toBe(true);
    expect(desk.get(HOLE)?.history).toHaveLength(5);
    expect(desk.health().savedAt).toMatch(/^2026-03-14T08:00:\d\d\+08:00$/);
    await desk.close();
  });

  it('applies an edit over two documents to both or to neither', async () => {
    const desk = await opened(newProject());
    const other = { kind: 'hole', id: 'ZQRC002' };
    const refused = desk.submit({
      what: 'two holes made',
      parts: [
        { document: HOLE, changes: holeMade() },
        { document: other, changes: [{ remove: ['rows', 'no one-1'] }] },
      ],
    });
    expect(refused).toEqual({ ok: false, problem: 'ZQRC002: rows no one-1 is not there' });
    expect(desk.documents().size).toBe(0);
    await desk.close();
  });

  it.each<[string, readonly Change[], string]>([
    [
      'a table that a hole has not',
      [{ put: ['lunch', 'a-1'], thing: {} }],
      'ZQRC001: a hole has no table lunch',
    ],
    ['a thing that is misshapen', [{ put: ['rows', 'a-1'], thing: { fromMm: 0.5 } }], 'rows a-1'],
    [
      'a header taken out from under its rows',
      [{ remove: ['hole', 'hole'] }],
      'ZQRC001: a hole needs its hole.hole',
    ],
    [
      'a reserved name',
      [{ put: ['rows', 'a-1'], thing: { fromMm: 0, toMm: 1000, cells: { toString: { flag: true } } } }],
      'the name toString is reserved',
    ],
  ])('refuses what could not be read back: %s', async (_, changes, problem) => {
    const { folder, hole } = await projectWithHole();
    const desk = await opened(folder);
    const refused = desk.submit({ what: 'wrong', parts: [{ document: HOLE, changes }] });
    expect(refused.ok).toBe(false);
    expect(refused.ok ? '' : refused.problem).toContain(problem);
    expect(desk.get(HOLE)).toEqual(hole);
    await desk.close();
  });

  it.each(['../ZQRC001', 'zqrc001', 'CON', ''])('refuses a new hole of the id %j', async (id) => {
    const desk = await opened(newProject());
    const refused = desk.submit({
      what: 'hole made',
      parts: [{ document: { kind: 'hole', id }, changes: holeMade() }],
    });
    expect(refused.ok ? '' : refused.problem).toContain(`"${id}" can't be an id`);
    await desk.close();
  });

  it('never gives an id twice, over sittings', async () => {
    const folder = newProject();
    const ids = new Set<string>();
    for (let sitting = 0; sitting < 3; sitting += 1) {
      const desk = await opened(folder);
      if (sitting === 0) await done(desk, HOLE, holeMade());
      for (let row = 0; row < 3; row += 1) {
        const id = desk.newId();
        expect(ids.has(id)).toBe(false);
        ids.add(id);
        await done(desk, HOLE, [rowLogged(id, sitting * 3 + row)]);
      }
      await desk.close();
    }
    expect(new Set([...ids].map((id) => id.split('-')[0])).size).toBe(1);
  });

  it('tells its listeners of every change until they stop listening', async () => {
    const desk = await opened(newProject());
    const listener = vi.fn();
    const stop = desk.subscribe(listener);
    await done(desk, HOLE, holeMade());
    expect(listener.mock.calls.length).toBeGreaterThanOrEqual(2);
    stop();
    const calls = listener.mock.calls.length;
    await done(desk, HOLE, [rowLogged(desk.newId(), 0)]);
    expect(listener.mock.calls.length).toBe(calls);
    await desk.close();
  });

  it('refuses edits once it is closed', async () => {
    const desk = await opened(newProject());
    await desk.close();
    expect(desk.submit({ what: 'late', parts: [{ document: HOLE, changes: holeMade() }] })).toEqual({
      ok: false,
      problem: 'the project is closed',
    });
  });

  it('keeps the order of the chain when the clock jumps back', async () => {
    const folder = newProject();
    let now = Date.UTC(2026, 2, 14, 12, 0, 0);
    const clock = {
      nowMs: () => {
        now -= 3_600_000;
        return now;
      },
      offsetMin: () => 480,
    };
    const desk = await opened(folder, { clock });
    await done(desk, HOLE, holeMade());
    for (const metre of [0, 1, 2]) await done(desk, HOLE, [rowLogged(desk.newId(), metre)]);
    await desk.close();
    const again = await opened(folder);
    expect(again.findings()).toEqual([]);
    expect(Object.values(again.get(HOLE)?.tables.rows ?? {}).map((row) => row.fromMm)).toEqual([
      0, 1000, 2000,
    ]);
    await again.close();
  });
});

describe('undo and redo', () => {
  it('take back the latest edit of this sitting and do it again, each as an entry of its own', async () => {
    const { folder, hole } = await projectWithHole();
    const desk = await opened(folder);
    const id = desk.newId();
    await done(desk, HOLE, [rowLogged(id, 3)], '3–4 logged');
    expect(desk.undo(HOLE).ok).toBe(true);
    expect(desk.get(HOLE)?.tables).toEqual(hole.tables);
    expect(desk.get(HOLE)?.history.at(-1)?.what).toBe('undo: 3–4 logged');
    expect(desk.redo().ok).toBe(true);
    expect(desk.get(HOLE)?.tables.rows?.[id]).toBeDefined();
    expect(desk.get(HOLE)?.history.at(-1)?.what).toBe('redo: 3–4 logged');
    expect(desk.undo(HOLE).ok).toBe(true);
    expect(desk.get(HOLE)?.tables).toEqual(hole.tables);
    expect(desk.get(HOLE)?.history).toHaveLength(hole.history.length + 4);
    await desk.close();
    const again = await opened(folder);
    expect(again.get(HOLE)).toEqual(desk.get(HOLE));
    await again.close();
  });

  it('go back edit by edit and no further than this sitting', async () => {
    const { folder, hole } = await projectWithHole();
    const desk = await opened(folder);
    for (const metre of [3, 4]) await done(desk, HOLE, [rowLogged(desk.newId(), metre)]);
    expect(desk.undo(HOLE).ok && desk.undo(HOLE).ok).toBe(true);
    expect(desk.get(HOLE)?.tables).toEqual(hole.tables);
    expect(desk.undo(HOLE)).toEqual({ ok: false, problem: 'nothing of this sitting is left to undo' });
    expect(desk.redo().ok && desk.redo().ok).toBe(true);
    expect(desk.redo()).toEqual({ ok: false, problem: 'nothing was undone since the last edit' });
    expect(Object.keys(desk.get(HOLE)?.tables.rows ?? {})).toHaveLength(5);
    await desk.close();
  });

  it('leave nothing to do again after another edit', async () => {
    const { folder } = await projectWithHole();
    const desk = await opened(folder);
    await done(desk, HOLE, [rowLogged(desk.newId(), 3)]);
    desk.undo(HOLE);
    await done(desk, HOLE, [rowLogged(desk.newId(), 3, 5)]);
    expect(desk.redo().ok).toBe(false);
    await desk.close();
  });

  it('are refused with the reason where what the edit touched has changed since', async () => {
    const { folder, hole } = await projectWithHole();
    const desk = await opened(folder);
    const [row = ''] = Object.keys(hole.tables.rows ?? {});
    const other = { kind: 'hole', id: 'ZQRC002' };
    const both = desk.submit({
      what: 'remark in both',
      parts: [
        { document: HOLE, changes: [{ patch: ['rows', row], set: { remark: 'one' } }] },
        { document: other, changes: holeMade('ZQRC002') },
      ],
    });
    expect(both.ok).toBe(true);
    const ours = desk.get(HOLE);
    if (ours === undefined) return expect.fail('the hole is gone');
    const theirs = apply(ours, { edit: 'theirs-1', at: desk.now(), by: 'NOK', what: 'remark two' }, [
      { patch: ['rows', row], set: { remark: 'two' } },
    ]);
    if (!theirs.ok) return expect.fail(theirs.problem);
    expect(desk.receive(theirs.document)).toMatchObject({ ok: true, outcome: 'newer' });
    expect(desk.undo()).toEqual({
      ok: false,
      problem: `"remark in both" can't be taken back: remark of rows ${row} has been changed since`,
    });
    await desk.close();
  });

  it('take back an edit over two documents in both', async () => {
    const desk = await opened(newProject());
    const other = { kind: 'hole', id: 'ZQRC002' };
    desk.submit({
      what: 'two holes made',
      parts: [
        { document: HOLE, changes: holeMade() },
        { document: other, changes: holeMade('ZQRC002') },
      ],
    });
    expect(desk.documents().size).toBe(2);
    expect(desk.undo(HOLE).ok).toBe(true);
    expect(desk.documents().size).toBe(0);
    expect(desk.redo().ok).toBe(true);
    expect(desk.documents().size).toBe(2);
    await desk.close();
  });
});
