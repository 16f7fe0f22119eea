import { describe, expect, it } from 'vitest';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

/** The console on the log of the hole that is being drilled. */
async function onLog(): Promise<Sitting> {
  const sitting = await sitDown(sampleFiles(), '2026-03-14T09:31:00+08:00');
  if (sitting.state().screen.name === 'holes') sitting.press('enter');
  return sitting;
}

const screen = (sitting: Sitting) => sitting.screen().join('\n');

describe('F1 knows what the cursor is on', () => {
  it('a typed row: each item with its field and what to look for', async () => {
    const sitting = await onLog();
    sitting.type('cl2py1');
    sitting.press('f1');
    expect(screen(sitting)).toContain('this row: 46–47');
    expect(screen(sitting)).toMatch(/cl2: alteration, chlorite\. \S+/);
    expect(screen(sitting)).toMatch(/py1: sulphides, pyrite\. \S+/);
    sitting.press('escape');
    expect(sitting.state().screen.name).toBe('log');
    expect(sitting.state().draft.text).toBe('cl2py1');
  });

  it('a row that is not taken: why, and what to do', async () => {
    const sitting = await onLog();
    sitting.type('qq9');
    sitting.press('f1');
    expect(screen(sitting)).toContain('qq is unknown');
  });

  it('a command: its form in this project’s own numbers', async () => {
    const sitting = await onLog();
    sitting.type(';scan');
    sitting.press('f1');
    expect(screen(sitting)).toContain('the command that is typed: ;scan');
    expect(screen(sitting)).toContain(';scan 42 MB000502');
  });

  it('a field of the form: how it is typed, what it takes, what leaving it unsaid means', async () => {
    const sitting = await onLog();
    sitting.press('f4', 'tab');
    sitting.press('f1');
    expect(screen(sitting)).toContain('this field: weathering');
    expect(screen(sitting)).toContain("Typed as wx or u with its amount, or weathering'.");
    expect(screen(sitting)).toMatch(/wx1: 1 fresh\. \S+/);
    sitting.press('escape');
    expect(sitting.state().screen.name).toBe('fields');
  });

  it('a code on the list of codes, and back to it', async () => {
    const sitting = await onLog();
    sitting.press('f7');
    sitting.type('tourmaline');
    sitting.press('f1');
    expect(screen(sitting)).toContain('this row');
    expect(screen(sitting)).toMatch(/tourmaline/);
    sitting.press('escape');
    expect(sitting.state().screen).toMatchObject({ name: 'codes', find: 'tourmaline' });
  });

  it('a hole on the list: its state and the keys that do something to it', async () => {
    const sitting = await onLog();
    sitting.press('f10', 'down');
    const { cursor } = sitting.state().screen as { readonly cursor: number };
    sitting.press('f1');
    expect(screen(sitting)).toContain('this hole: MBRC004, planned');
    expect(screen(sitting)).toMatch(/l: Line the rig up/);
    expect(screen(sitting).split('keys and commands')[1]?.split('on the list of holes')[0]).not.toMatch(
      / r: Redrill/,
    );
    sitting.press('escape');
    expect(sitting.state().screen).toMatchObject({ name: 'holes', cursor });
  });

  it('a shot: what the checks say of it', async () => {
    const sitting = await onLog();
    sitting.press('f6', 'f1');
    expect(screen(sitting)).toContain('this shot');
    sitting.press('escape');
    expect(sitting.state().screen.name).toBe('survey');
  });
});
