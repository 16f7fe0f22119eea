import { describe, expect, it } from 'vitest';
import { checkProject } from '../../src/check/check-hole.ts';
import { holeNouns } from '../../src/hole/hole.ts';
import { bagsOnGround } from '../../src/standing/stream.ts';
import { emptySample, type Sitting, sitDown } from './support/sitting.ts';

const text = (sitting: Sitting, columns = 100, rows = 40): string =>
  sitting
    .screen(columns, rows)
    .join(' ')
    .replaceAll(/[│\s]+/g, ' ');

/** A hole made on the rig with six metres logged, the fourth of them as `fourth` says. */
async function drilled(fourth = '.', last = 'MB000720'): Promise<Sitting> {
  const sitting = await sitDown(emptySample());
  sitting.type('n');
  sitting.enter('MBRC020 270g -60 120');
  sitting.press('enter');
  sitting.enter(`;numbered MB000601 ${last}`);
  for (const line of ['bawx1ox1', '.', '.', fourth, 'bawx1ox1', '.']) sitting.enter(line);
  return sitting;
}

const bits = (sitting: Sitting) => holeNouns(sitting.hole('MBRC020'), 'bits').map(({ bitMm }) => bitMm);

describe('a bit gauge', () => {
  async function measured(): Promise<Sitting> {
    const sitting = await drilled();
    sitting.press('f2', 'enter');
    sitting.enter(';bit 138.2');
    return sitting;
  }

  it('of another value at the same depth is asked, and the line is kept', async () => {
    const sitting = await measured();
    sitting.enter(';bit 128');
    expect(bits(sitting)).toEqual([138.2]);
    expect(text(sitting)).toContain('At 6 m the bit is recorded as 138.2 mm already');
    expect(sitting.state().draft.text).toBe(';bit 128');
    sitting.enter(' =');
    expect(bits(sitting)).toEqual([128]);
  });

  it.each([
    ['that grew', ';bit 139', 'a bit does not grow. Is it a new one?'],
    ['that wore at a jump', ';bit 128', '10.2 mm less than 138.2 mm at 6 m'],
  ])('%s is asked', async (_what, line, words) => {
    const sitting = await measured();
    sitting.press('f2', 'enter');
    sitting.enter(line);
    expect(bits(sitting)).toEqual([138.2]);
    expect(text(sitting)).toContain(words);
    sitting.enter(' =');
    expect(bits(sitting)).toHaveLength(2);
  });

  it('that wore by tenths is taken', async () => {
    const sitting = await measured();
    sitting.press('f2', 'enter');
    sitting.enter(';bit 137.9');
    expect(bits(sitting)).toEqual([138.2, 137.9]);
  });
});

describe.each(['nr', 'vr', 'ln'])('a metre logged as %s', (line) => {
  it('has its number shown as kept before the rod is confirmed, and is not counted', async () => {
    const sitting = await drilled(line);
    sitting.press('f2');
    expect(text(sitting)).toContain(
      '5 bags expected, the last calico is MB000606; 1 number is kept, no sample',
    );
    expect(text(sitting)).toContain('MB000604 no sample 3–4');
    sitting.enter('x5');
    expect(text(sitting)).toContain('5 bags and 1 kept without a sample');
  });

  it('takes a bag by hand only when it is asked for twice', async () => {
    const sitting = await drilled(line);
    sitting.press('f2', 'enter');
    const fourth = () =>
      bagsOnGround(sitting.hole('MBRC020')).find(({ number }) => number === 'MB000604')?.kind;
    sitting.enter(';bag 3-4 604');
    expect(fourth()).toBe('no sample');
    expect(text(sitting)).toContain('Nothing came up at 3–4');
    sitting.enter(' =');
    expect(fourth()).toBe('primary');
  });
});

describe('a hold', () => {
  async function held(): Promise<Sitting> {
    const sitting = await drilled();
    sitting.press('f2', 'enter');
    sitting.enter(';hold assay of the vein is awaited');
    return sitting;
  }

  it('of another person is not ended in silence: who holds, where and why is said, and = ends it', async () => {
    const sitting = await (await held()).reopen('IFA');
    sitting.enter(';extend to 66 zone open');
    expect(text(sitting)).toContain('held by NOK at 6 m: assay of the vein is awaited');
    expect(holeNouns(sitting.hole('MBRC020'), 'decisions')).toHaveLength(1);
    sitting.enter(' =');
    expect(holeNouns(sitting.hole('MBRC020'), 'decisions').map(({ kind }) => kind)).toEqual([
      'held',
      'extended',
    ]);
    expect(text(sitting)).toContain('this ends the hold: held by NOK at 6 m');
  });

  it('has its reason and its name in the history', async () => {
    const sitting = await held();
    sitting.press('f9');
    expect(text(sitting)).toMatch(/NOK held at 6 m .*assay of the vein is awaited/);
  });
});

describe('labels that run out', () => {
  it('are said at the rod, with the metres that have no bag', async () => {
    const sitting = await drilled('.', 'MB000604');
    sitting.press('f2', 'enter');
    expect(text(sitting)).toMatch(/4–6 has no bag: no numbered one is left/);
    const found = checkProject(sitting.state().project, [...sitting.state().documents.values()]);
    expect(found.filter(({ code }) => code === 'metres-without-a-bag').map(({ problem }) => problem)).toEqual(
      ['4–6 is drilled and has no bag: the numbers ran out.'],
    );
  });
});
