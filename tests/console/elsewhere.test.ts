import { describe, expect, it, vi } from 'vitest';
import { sampleFiles, sitDown } from './support/sitting.ts';

const sit = () => sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
const said = (sitting: Awaited<ReturnType<typeof sit>>) => sitting.state().message?.text ?? '';

describe('going on in another folder', () => {
  it('writes everything there by one line, and work goes on there', async () => {
    const ours = Object.entries(sampleFiles()).filter(([path]) => path.endsWith('.json'));
    const sitting = await sitDown(Object.fromEntries(ours), '2026-03-14T09:08:00+08:00');
    sitting.enter('p3');
    sitting.enter(';elsewhere /other');
    await vi.waitFor(() => expect(said(sitting)).toBe('All is in /other; work goes on there.'));
    expect(sitting.desk.folder()).toBe('/other');
    sitting.enter('p5');
    await vi.waitFor(() => expect(sitting.desk.health()).toMatchObject({ state: 'safe', unsafeEdits: 0 }));
  });

  it('says that what no console reads stays behind, and where it is named', async () => {
    const sitting = await sit();
    sitting.enter(';elsewhere /other');
    await vi.waitFor(() => expect(said(sitting)).toContain('not taken along: Ctrl-F names it'));
    expect(sitting.desk.folder()).toBe('/other');
    expect(JSON.stringify(sitting.desk.findings())).toContain('laboratory');
  });

  it('asks for the folder if none is given, also from the list of holes', async () => {
    const sitting = await sit();
    sitting.enter(';elsewhere');
    expect(sitting.screen().join('\n')).toContain('empty or not there yet');
    sitting.press('enter');
    expect(said(sitting)).toContain('Type a folder');
    sitting.press('escape', 'f10', 'ctrl-e');
    sitting.enter('/third');
    await vi.waitFor(() => expect(sitting.desk.folder()).toBe('/third'));
  });

  it('stays where it is, and says why, where the folder holds something', async () => {
    const sitting = await sit();
    sitting.enter(';elsewhere /project/holes');
    await vi.waitFor(() => expect(said(sitting)).toContain('Not moved'));
    expect(sitting.desk.folder()).toBe('/project');
  });
});
