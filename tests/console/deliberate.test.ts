import { describe, expect, it } from 'vitest';
import { holeNouns } from '../../src/hole/hole.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const message = (sitting: Sitting): string => sitting.state().message?.text ?? '';
const rejected = (sitting: Sitting): number =>
  holeNouns(sitting.hole('MBRC003'), 'shots').filter((shot) => shot.rejected !== undefined).length;

async function atRejection(): Promise<Sitting> {
  const sitting = await sitDown(sampleFiles());
  sitting.press('f6');
  sitting.type('x');
  sitting.enter('the tool moved');
  return sitting;
}

describe('what others act on before anybody looks', () => {
  it('is recorded by y alone: Enter again, Escape and any other letter go back to the question with what was typed', async () => {
    const sitting = await atRejection();
    expect(message(sitting)).toBe('y records this. Any other key goes back to it.');
    for (const back of ['enter', 'escape', 'f2', 'up']) {
      sitting.press(back);
      expect(sitting.state().prompt).toMatchObject({ kind: 'rejection', draft: { text: 'the tool moved' } });
      expect(message(sitting)).toBe('');
      sitting.press('enter');
    }
    sitting.type('n');
    sitting.press('enter');
    expect(rejected(sitting)).toBe(0);
    sitting.type('y');
    expect(rejected(sitting)).toBe(1);
    expect(sitting.state().prompt).toBeUndefined();
  });

  it('is asked only once it could be recorded: a missing reason is said at once', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.press('f6');
    sitting.type('x');
    sitting.press('enter');
    expect(message(sitting)).toContain('Say why');
  });

  it('is asked before a hole is abandoned, and not before it is suspended, which is taken up again', async () => {
    const sitting = await sitDown(sampleFiles());
    const state = () => sitting.hole('MBRC003').tables.hole?.hole?.state;
    sitting.press('f10');
    sitting.type('a');
    sitting.enter('rods stuck');
    expect(state()).toBe('drilling');
    sitting.press('escape', 'escape');
    sitting.type('s');
    sitting.enter('storm');
    expect(state()).toBe('suspended');
    sitting.type('a');
    sitting.enter('rods stuck');
    sitting.type('y');
    expect(state()).toBe('abandoned');
  });
});

describe('a window that is too small', () => {
  it('takes no key: nothing changes that no one sees, and all is there when it is larger again', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.type('p3');
    const rows = Object.keys(sitting.hole('MBRC003').tables.rows ?? {}).length;
    for (const [columns, height] of [
      [1, 1],
      [1, 2],
      [2, 40],
      [79, 24],
      [80, 23],
      [200, 3],
    ] as const) {
      sitting.resize(columns, height);
      expect(sitting.screen()).toHaveLength(height - 1);
      sitting.press('enter', 'f3', 'f2');
      sitting.type('x');
    }
    sitting.resize(80, 24);
    expect(sitting.state()).toMatchObject({ screen: { name: 'log' }, draft: { text: 'p3' } });
    sitting.press('enter');
    expect(Object.keys(sitting.hole('MBRC003').tables.rows ?? {})).toHaveLength(rows + 1);
  });

  it('keeps what was scrolled to in a list', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.press('f9', 'page-down', 'page-down');
    const before = sitting.state();
    for (const [columns, height] of [
      [1, 1],
      [4, 4],
      [80, 2],
    ] as const) {
      sitting.resize(columns, height);
      sitting.happen({ kind: 'minute', now: before.now });
    }
    expect(sitting.state().screen).toEqual(before.screen);
  });
});
