import { describe, expect, it } from 'vitest';
import { rowsDown } from '../../src/hole/hole.ts';
import { emptySample, type Sitting, sitDown } from './support/sitting.ts';

const text = (sitting: Sitting): string =>
  sitting
    .screen(100, 40)
    .join(' ')
    .replaceAll(/[│\s]+/g, ' ');

/** A hole made on the rig, a rod done, one metre logged with pyrite. */
async function logging(...lines: readonly string[]): Promise<Sitting> {
  const sitting = await sitDown(emptySample());
  sitting.type('n');
  sitting.enter('MBRC020 270g -60 120');
  sitting.press('enter');
  sitting.enter(';numbered MB000601 MB000720');
  sitting.press('f2', 'enter');
  for (const line of ['bawx1ox1py2', ...lines]) sitting.enter(line);
  return sitting;
}

const rows = (sitting: Sitting) => rowsDown(sitting.hole('MBRC020')).map(([, row]) => row);

describe.each([
  ['a void', 'vr', 'void'],
  ['a loss of return', 'ln', 'loss of return'],
  ['a metre without return', 'nr', 'no return'],
])('below %s', (_what, line, word) => {
  it('nothing carries: a line that leaves the rock out is refused, and says why', async () => {
    const sitting = await logging(line);
    expect(rows(sitting)).toHaveLength(2);
    expect(text(sitting)).toMatch(/Log the row below .* in full: nothing carries across it/);
    sitting.enter('cl2');
    expect(rows(sitting)).toHaveLength(2);
    expect(text(sitting).toLowerCase()).toContain(word);
    expect(text(sitting)).not.toContain('same as the row above');
  });

  it('a full line is taken as it is, with no amount from above the gap', async () => {
    const sitting = await logging(line);
    sitting.enter('bawx1ox1');
    expect(rows(sitting)).toHaveLength(3);
    expect(rows(sitting)[2]?.cells.sulphides).toEqual({ absent: 'none' });
    expect(rows(sitting)[2]?.asked).toBeUndefined();
    expect(rows(sitting)[2]?.carried ?? []).toEqual([]);
  });

  it('single keys have no mineral: the pair is asked for', async () => {
    const sitting = await logging(line);
    sitting.enter('bawx1ox1p3');
    expect(rows(sitting)).toHaveLength(2);
    expect(text(sitting)).toContain('py3');
  });

  it('the dot alone repeats the last metre seen, and asks first', async () => {
    const sitting = await logging(line);
    sitting.enter('.');
    expect(rows(sitting)).toHaveLength(2);
    expect(text(sitting)).toContain('. repeats the last metre that was seen');
  });
});

describe('a metre without return right below a void or a loss of return', () => {
  it.each(['vr', 'ln'])('shows its caution again: %s', async (line) => {
    const sitting = await logging(line, 'nr');
    expect(rows(sitting)).toHaveLength(3);
    expect(text(sitting)).toContain('CAUTION no return right below it, so it may go on.');
  });

  it('has that of a loss of return where the metre above was seen', async () => {
    const sitting = await logging('nr');
    expect(text(sitting)).toContain('CAUTION no return: Broken ground or a void may be near.');
    expect(text(sitting)).not.toContain('so it may go on');
  });
});
