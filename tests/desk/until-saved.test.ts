import { writeFileSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { openDesk } from '../../src/desk/desk.ts';
import { remedyUnsaved, untilSaved } from '../../src/desk/until-saved.ts';
import { deskOptions, newProject } from './support/project.ts';
import { troubledDesk } from './support/troubled.ts';
import { HOLE, holeMade, rowLogged } from './support/values.ts';

const FULL = 'ENOSPC';

describe('waiting for an edit to be saved', () => {
  it('outlasts a fault that passes: it is saved, once, and nothing says that it is not', async () => {
    const { desk, trouble } = await troubledDesk();
    desk.submit({ what: 'made', parts: [{ document: HOLE, changes: holeMade() }] });
    await desk.retry();
    trouble.now = FULL;
    const submitted = desk.submit({
      what: 'logged',
      parts: [{ document: HOLE, changes: [rowLogged('k-1', 0)] }],
    });
    const pauses: number[] = [];
    const saved = await untilSaved(desk, submitted, async (ms) => {
      pauses.push(ms);
      if (pauses.length === 3) trouble.now = undefined;
    });
    expect(saved).toMatchObject({ ok: true });
    expect(pauses).toHaveLength(3);
    expect(desk.health()).toMatchObject({ state: 'safe', unsafeEdits: 0 });
    expect(Object.keys(desk.get(HOLE)?.tables.rows ?? {})).toEqual(['k-1']);
    await desk.close();
  });

  it('gives up on one that does not, and does not say that nothing is saved: it is tried again on closing', async () => {
    const { desk, trouble } = await troubledDesk();
    trouble.now = FULL;
    const submitted = desk.submit({ what: 'made', parts: [{ document: HOLE, changes: holeMade() }] });
    const saved = await untilSaved(desk, submitted, async () => {});
    expect(saved).toEqual({ ok: false, problem: 'the disk is full', waiting: true });
    expect(remedyUnsaved(saved, 'the line')).not.toContain('Nothing');
    trouble.now = undefined;
    expect(await desk.close()).toEqual({ ok: true });
  });

  it('of an edit that was refused says that nothing of it is saved', async () => {
    const { desk } = await troubledDesk();
    const refused = desk.submit({ what: 'nothing', parts: [] });
    const saved = await untilSaved(desk, refused, async () => {});
    expect(remedyUnsaved(saved, 'the line')).toBe(
      'Nothing of it is saved. Mend that, then give the line again.',
    );
    await desk.close();
  });
});

describe('a timer that someone waits for', () => {
  it('keeps the program alive: a lock of no bytes, as a power cut leaves it, is waited for and taken over', async () => {
    const folder = newProject();
    await mkdir(join(folder, 'journal'));
    writeFileSync(join(folder, 'journal/lock.json'), '');
    const timers: NodeJS.Timeout[] = [];
    const made = vi.spyOn(globalThis, 'setTimeout');
    const opened = await openDesk(deskOptions(folder));
    for (const { value } of made.mock.results) timers.push(value as NodeJS.Timeout);
    made.mockRestore();
    expect(timers.length).toBeGreaterThan(0);
    expect(timers.every((timer) => timer.hasRef())).toBe(true);
    if (!opened.ok) throw new Error('must open');
    expect(opened.value.findings().map(({ code }) => code)).toEqual(['stale-lock']);
    await opened.value.close();
  });
});
