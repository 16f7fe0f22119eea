import { describe, expect, it } from 'vitest';
import { newProject, opened } from './support/project.ts';
import { HOLE, holeMade, rowLogged } from './support/values.ts';

describe('a desk', () => {
  it('takes an edit at once, says when it is on the medium, and shows it again after closing', async () => {
    const folder = newProject();
    const desk = await opened(folder);
    const made = desk.submit({ what: 'hole made', parts: [{ document: HOLE, changes: holeMade() }] });
    expect(made.ok && (await made.durable).ok).toBe(true);
    const row = desk.submit({
      what: 'row logged',
      parts: [{ document: HOLE, changes: [rowLogged(desk.newId(), 0)] }],
    });
    expect(Object.keys(desk.get(HOLE)?.tables.rows ?? {})).toHaveLength(1);
    expect(row.ok && (await row.durable).ok).toBe(true);
    expect(await desk.close()).toEqual({ ok: true });
    const again = await opened(folder);
    expect(again.findings()).toEqual([]);
    expect(again.get(HOLE)).toEqual(desk.get(HOLE));
    await again.close();
  });
});
