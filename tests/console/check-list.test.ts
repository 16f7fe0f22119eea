import { describe, expect, it } from 'vitest';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const shown = (sitting: Sitting) => sitting.screen().join('\n');

describe('the list of what check finds', () => {
  it('is gone through by Enter and back by the key that opened it, with the cursor where it was', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.press('f10', 'ctrl-o', 'down', 'down');
    const { screen } = sitting.state();
    expect(screen).toMatchObject({ name: 'check', cursor: 2 });
    sitting.press('enter');
    expect(sitting.state().screen.name).not.toBe('check');
    expect(shown(sitting)).toContain('Ctrl-O leads back to the list of findings.');
    sitting.press('ctrl-o');
    expect(sitting.state().screen).toMatchObject({ name: 'check', cursor: 2 });
  });

  it('stands by severity, and hole by hole after Tab', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.press('f10', 'ctrl-o');
    expect(shown(sitting)).toMatch(/notes · \d+/);
    sitting.press('tab');
    expect(shown(sitting)).toMatch(/MBRC001 · \d+/);
    expect(shown(sitting)).not.toMatch(/notes · /);
  });

  it('takes a finding as it is with the reason, in two keys and the words, and Ctrl-U opens it again', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(';check');
    const open = () => / (\d+) open/.exec(shown(sitting))?.[1];
    const before = Number(open());
    sitting.press('right');
    sitting.enter('seen at the rig');
    expect(Number(open())).toBe(before - 1);
    expect(shown(sitting)).toContain('1 accepted');
    expect(Object.values(sitting.hole('MBRC003').tables.accepted ?? {})).toMatchObject([
      { reason: 'seen at the rig', by: 'NOK' },
    ]);
    sitting.press('ctrl-u');
    expect(Number(open())).toBe(before);
  });

  it('a hole that camp signed off takes nothing, and says who and how to open it', async () => {
    const sitting = await (await sitDown(sampleFiles())).reopen('IFA');
    sitting.press('f10', 'up', 'up', 'up', 'up', 'up', 'enter');
    expect(sitting.state().screen).toMatchObject({ hole: 'MBRC001' });
    sitting.enter(';sign-off standards pass');
    expect(shown(sitting)).toContain('signed off MBRC001: 150 rows');
    const rows = sitting.hole('MBRC001').tables.rows;
    sitting.enter(';mass 34-35 bulk 30');
    expect(shown(sitting)).toContain('it was signed off by IFA on');
    expect(sitting.hole('MBRC001').tables.rows).toBe(rows);
    sitting.enter(';open-again masses were misread');
    sitting.enter(';mass 34-35 bulk 30');
    expect(shown(sitting)).not.toContain('it was signed off');
  });
});
