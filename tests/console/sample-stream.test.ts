import { describe, expect, it } from 'vitest';
import { emptySample, type Files, type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

/** A hole made on the rig, drilling, with numbered bags. */
async function drilling(files: Files = emptySample()): Promise<Sitting> {
  const sitting = await sitDown(files);
  sitting.type('n');
  sitting.enter('MBRC020 270g -60 120');
  sitting.press('enter');
  sitting.enter(';numbered MB000601 MB000720');
  return sitting;
}

/** The log of a hole that is complete. */
async function closed(): Promise<Sitting> {
  const sitting = await sitDown(sampleFiles());
  sitting.press('f10', 'up', 'up', 'up', 'up', 'enter');
  return sitting;
}

const said = (sitting: Sitting) => sitting.state().message?.text ?? '';
const shown = (sitting: Sitting) => sitting.screen().join('\n');

describe('undo right after a rod', () => {
  it('says that it takes the rod back, with its bags, and how to have it again', async () => {
    const sitting = await drilling();
    sitting.press('f2', 'enter');
    sitting.enter(';u');
    expect(said(sitting)).toBe('Undone: rod 1 done at 6 m, with its 6 bags. Ctrl-r does it again.');
    sitting.press('ctrl-r');
    expect(said(sitting)).toBe('Done again: rod 1 done at 6 m.');
  });
});

describe('a hole that is over', () => {
  it('shows what it used and no bag that comes, on the panel and on the screen of bags', async () => {
    const sitting = await closed();
    expect(sitting.state().screen).toMatchObject({ name: 'log', hole: 'MBRC001' });
    expect(shown(sitting)).toContain('the hole is complete: no bag comes');
    expect(shown(sitting)).toContain('numbered bags are left over');
    sitting.press('f3');
    expect(shown(sitting)).toContain('the hole is complete: no bag comes');
    expect(shown(sitting)).not.toContain('[ ] MB');
  });

  it('takes no rod, and says how to go on', async () => {
    const sitting = await closed();
    sitting.press('f2');
    expect(sitting.state().prompt).toBeUndefined();
    expect(said(sitting)).toContain('MBRC001 is complete: no rod is done in it. F10, then o reopens it.');
  });
});
