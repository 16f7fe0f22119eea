import { describe, expect, it } from 'vitest';
import { emptySample, type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const text = (sitting: Sitting, columns = 100, rows = 40): string =>
  sitting
    .screen(columns, rows)
    .join(' ')
    .replaceAll(/[│\s]+/g, ' ');

/** A hole made on the rig that is being drilled. */
async function begun(): Promise<Sitting> {
  const sitting = await sitDown(emptySample());
  sitting.type('n');
  sitting.enter('MBRC020 270g -60 120');
  sitting.press('enter');
  sitting.enter(';numbered MB000601 MB000720');
  return sitting;
}

describe('a line that is refused', () => {
  it('on a first row says that there is no row above yet, and how the thing is typed', async () => {
    const sitting = await begun();
    sitting.enter('bawx1ox1p3');
    expect(text(sitting)).toContain('No row above carries pyrite into this one. Type py3 if you see it');
    expect(sitting.state().draft.text).toBe('bawx1ox1p3');
  });

  it('names both rocks where two would stand beside the first', async () => {
    const sitting = await begun();
    sitting.enter('bash30ag20wx1ox1');
    expect(text(sitting)).toMatch(/shale and granodiorite are both given as the second rock/i);
  });

  it('names both amounts where one thing is given twice', async () => {
    const sitting = await begun();
    sitting.enter('bawx1ox1py2cl1py5');
    expect(text(sitting)).toContain('pyrite is given twice. Give it once: 2 or 5? Nothing was taken');
  });

  it('offers the code whose letters were the wrong way round, tourmaline among them', async () => {
    const sitting = await begun();
    sitting.enter('bawx1ox1lm2');
    expect(text(sitting)).toContain('ml tourmaline');
  });

  it('after a handover ends the question before the next sentence begins', async () => {
    const sitting = await (await sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00')).reopen('IFA');
    sitting.press('enter');
    sitting.enter('bawx1ox1sr2');
    expect(text(sitting)).not.toContain('?.');
    expect(text(sitting)).toMatch(/\? The first row after NOK is logged in full/);
  });
});

describe(';fix without anything behind it', () => {
  it('says so where no mismatch is open', async () => {
    const sitting = await begun();
    sitting.enter(';fix');
    expect(text(sitting)).toContain('No bag mismatch is open in this hole.');
  });

  it('opens the mismatch that was noted, with its ways', async () => {
    const sitting = await begun();
    sitting.press('f2');
    sitting.enter('605');
    sitting.press('enter');
    sitting.enter(';fix');
    expect(text(sitting)).toContain('rod 1 noted before: 605');
    expect(text(sitting)).toMatch(/a = /);
  });
});

describe('the line-up', () => {
  it.each(['p', 'pegs', 'sight', '1'])('takes the way by its first letters: %s', async (typed) => {
    const sitting = await begun();
    sitting.press('f10');
    sitting.press('up', 'up', 'up', 'up');
    sitting.type('l');
    for (let step = 0; step < 6 && !/set by ▸/.test(text(sitting)); step += 1) sitting.enter('y');
    expect(text(sitting)).toContain('set by ▸');
    sitting.enter(typed);
    expect(text(sitting)).not.toContain('Type 1 or pegs');
    expect(text(sitting)).not.toContain('set by ▸');
  });
});

describe('a mineral that goes on from a trace', () => {
  it('is no more asked at a common amount than one that begins from none', async () => {
    const sitting = await begun();
    for (const line of ['bawx1ox1', 'py2', 'py0', 'py,', 'py2']) sitting.enter(line);
    expect(text(sitting)).toContain('logged 4–5');
    sitting.enter('py20');
    expect(text(sitting)).toContain('pyrite goes from 2 % to 20 % in one row');
  });
});
