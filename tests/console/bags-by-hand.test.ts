import { describe, expect, it } from 'vitest';
import { type HoleNoun, type HoleTable, holeNouns } from '../../src/hole/hole.ts';
import { checkBags } from '../../src/sampling/stream/bags-check.ts';
import { streamAheadOf } from '../../src/standing/stream.ts';
import { emptySample, type Files, type Sitting, sitDown } from './support/sitting.ts';

/** A hole made on the rig, drilling, with numbered bags: 613 is kept for a duplicate, 620 for a standard. */
async function drilling(files: Files = emptySample()): Promise<Sitting> {
  const sitting = await sitDown(files);
  sitting.type('n');
  sitting.enter('MBRC020 270g -60 120');
  sitting.press('enter');
  sitting.enter(';numbered MB000601 MB000720');
  return sitting;
}

const hole = (sitting: Sitting) => sitting.hole('MBRC020');
const table = <T extends HoleTable>(sitting: Sitting, name: T): readonly HoleNoun<T>[] =>
  holeNouns(hole(sitting), name);
const said = (sitting: Sitting) => sitting.state().message?.text ?? '';
const shown = (sitting: Sitting) => sitting.screen().join('\n');
const rods = (sitting: Sitting, count: number) => {
  for (let each = 0; each < count; each++) sitting.press('f2', 'enter');
};
const coming = (sitting: Sitting, count: number) =>
  streamAheadOf(sitting.state().project, hole(sitting), count).upcoming.map(
    ({ number, kind, fromMm = -1000 }) => `${number.slice(-3)} ${kind} ${fromMm / 1000}`,
  );
const bag = (sitting: Sitting, ends: string) =>
  table(sitting, 'bags').find(({ number }) => number.endsWith(ends));
const faults = (sitting: Sitting) =>
  checkBags(sitting.state().project.sampling, [
    {
      hole: 'MBRC020',
      bags: table(sitting, 'bags'),
      bagRuns: table(sitting, 'bagRuns'),
      choices: table(sitting, 'controlChoices'),
    },
  ]).map((each) => each.code);

describe('a bag placed by hand', () => {
  it('never moves the stream: numbers between it and the next stay due, controls too', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    const before = coming(sitting, 9);
    sitting.enter(';bag 20-21 650');
    expect(bag(sitting, '650')).toMatchObject({ kind: 'primary', fromMm: 20_000, byHand: true });
    expect(coming(sitting, 9)).toEqual(before);
    expect(coming(sitting, 9)).toContain('613 field duplicate 11');
  });

  it('leaves its metre out of what comes, and lies in the row of its rod', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    sitting.enter(';bag 8-9 650');
    expect(coming(sitting, 4)).toEqual(['607 primary 6', '608 primary 7', '609 primary 9', '610 primary 10']);
    sitting.press('f2');
    sitting.enter('611 x6');
    expect(said(sitting)).toContain('Rod 2 done at 12 m');
    expect(faults(sitting)).toEqual([]);
    sitting.press('f2');
    sitting.enter('618 x7');
    expect(said(sitting)).toContain('Rod 3 done at 18 m');
  });

  it('puts right what is in a bag that is issued, where the log was a metre out', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    sitting.enter(';bag duplicate 5-6 604');
    expect(bag(sitting, '604')).toMatchObject({ kind: 'field duplicate', fromMm: 5000, of: 'MB000606' });
    sitting.enter(';bag 3-4 604');
    expect(bag(sitting, '604')).toMatchObject({ kind: 'primary', fromMm: 3000 });
    expect(bag(sitting, '604')).not.toHaveProperty('of');
    expect(coming(sitting, 1)).toEqual(['607 primary 6']);
    expect(faults(sitting)).toEqual([]);
  });

  it('is named by its last digits, with or without the prefix, and a refused line keeps what was typed', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    sitting.enter(';bag standard MB640');
    expect(bag(sitting, '640')?.kind).toBe('standard');
    sitting.enter(';spoiled 999 torn');
    expect(said(sitting)).toContain('No number labelled for this hole ends so');
    expect(sitting.state().draft.text).toBe(';spoiled 999 torn');
  });

  it('under a number that another hole has used is refused', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    sitting.press('f10');
    sitting.type('n');
    sitting.enter('MBRC021 270g -60 60');
    sitting.press('enter');
    sitting.enter(';bag 0-1 MB000603');
    expect(said(sitting)).toContain('MB000603 is on a bag of MBRC020 already');
    expect(sitting.state().draft.text).toBe(';bag 0-1 MB000603');
  });
});

describe('a torn calico', () => {
  it('that is issued is replaced by the last spare of the run in one line, and its duplicate follows', async () => {
    const sitting = await drilling();
    rods(sitting, 2);
    const before = coming(sitting, 9);
    sitting.enter(';spare 612 torn');
    expect(said(sitting)).toBe('bag MB000612 torn: MB000719 takes its place');
    expect(bag(sitting, '612')).toMatchObject({ kind: 'spoiled', fromMm: 11_000 });
    expect(bag(sitting, '719')).toMatchObject({ kind: 'primary', fromMm: 11_000, toMm: 12_000 });
    expect(bag(sitting, '613')).toMatchObject({ kind: 'field duplicate', of: 'MB000719' });
    expect(coming(sitting, 9)).toEqual(before);
    expect(faults(sitting)).toEqual([]);
    sitting.enter(';u');
    expect(bag(sitting, '612')).toMatchObject({ kind: 'primary' });
    expect(bag(sitting, '719')).toBeUndefined();
  });

  it('that is still to come is replaced too, the metres above keep their numbers and its duplicate follows the spare', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    sitting.enter(';spare 612 torn');
    expect(coming(sitting, 7)).toEqual([
      '607 primary 6',
      '608 primary 7',
      '609 primary 8',
      '610 primary 9',
      '611 primary 10',
      '613 field duplicate 11',
      '614 primary 12',
    ]);
    sitting.press('f2');
    sitting.enter('613 x7');
    expect(said(sitting)).toContain('Rod 2 done at 12 m');
    expect(bag(sitting, '613')).toMatchObject({ of: 'MB000719' });
    expect(faults(sitting)).toEqual([]);
  });

  it('is replaced by the spare that is said: of another run of the hole, or from outside', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    sitting.enter(';numbered MB000801 MB000810');
    sitting.enter(';spare 603 805 torn');
    expect(bag(sitting, '805')).toMatchObject({ kind: 'primary', fromMm: 2000 });
    sitting.enter(';spare 604 MB000999 wet through');
    expect(bag(sitting, '999')).toMatchObject({ kind: 'primary', fromMm: 3000 });
    expect(coming(sitting, 1)).toEqual(['607 primary 6']);
    expect(faults(sitting)).toEqual([]);
    sitting.enter(';spare 999 torn');
    expect(bag(sitting, '999')?.kind).toBe('spoiled');
  });

  it('that holds nothing needs none, and the line stays', async () => {
    const sitting = await drilling();
    sitting.enter(';spoiled 601 torn');
    sitting.enter(';spare 601');
    expect(said(sitting)).toContain('Nothing is in it');
    expect(sitting.state().draft.text).toBe(';spare 601');
  });
});

describe('a rod check', () => {
  it('takes an answer of the right kind alone to a look: a figure is neither a way nor a new reading, but for the number expected', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    sitting.press('f2');
    sitting.enter('611');
    const before = sitting.state().prompt;
    expect(shown(sitting)).toContain('To be sure: ');
    for (const wrong of ['4', '619', 'yes', 'x6 n']) {
      sitting.enter(wrong);
      expect(sitting.state().prompt).toMatchObject({ kind: 'mismatch', looked: {}, lastDigits: '611' });
      expect(sitting.state().prompt).toMatchObject({ draft: { text: wrong } });
      for (const _ of wrong) sitting.press('backspace');
    }
    expect(sitting.state().prompt).toMatchObject({ ...before });
    expect(table(sitting, 'rods')).toHaveLength(1);
  });

  it('is put right with one word where the reading was wrong, at once and later', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    sitting.press('f2');
    sitting.enter('611');
    sitting.enter('fits');
    expect(table(sitting, 'rods').at(-1)).toMatchObject({ depthMm: 12_000, read: true, lastBag: 'MB000613' });
    sitting.press('f2');
    sitting.enter('618');
    sitting.press('enter');
    expect(table(sitting, 'rods').at(-1)?.unmended).toBe(true);
    sitting.enter(';fix fits');
    expect(table(sitting, 'rods').at(-1)).toMatchObject({ read: true });
    expect(table(sitting, 'rods').at(-1)).not.toHaveProperty('unmended');
    sitting.enter(';fix');
    expect(said(sitting)).toContain('No bag mismatch is open');
  });

  it('asks for the one fact that can be seen where many places are left, and takes it', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    sitting.press('f2');
    sitting.enter('611 x5');
    expect(shown(sitting)).toContain('Is one calico about twice as heavy');
    sitting.enter('n');
    expect(shown(sitting)).toContain('Which pile has no calico beside it?');
    sitting.enter('9-10');
    expect(table(sitting, 'stream')).toMatchObject([
      { fromMm: 9000, toMm: 10_000, unsampled: 'no bag was filled' },
    ]);
    expect(faults(sitting)).toEqual([]);
  });

  it('remembers a rod that was read and agreed, so that no later look finds it guilty', async () => {
    const sitting = await drilling();
    sitting.press('f2');
    sitting.enter('606');
    sitting.press('f2');
    sitting.enter('612 x7');
    const words = shown(sitting).replace(/[│\s]+/g, ' ');
    expect(words).not.toContain('rods above');
    expect(words).not.toContain('one behind');
  });
});

describe('a number of the project', () => {
  it('that is labelled for no hole yet is never called foreign', async () => {
    const sitting = await drilling();
    sitting.enter('MB000900');
    const words = shown(sitting).replace(/[│\s]+/g, ' ');
    expect(words).toContain('labelled for no hole yet: a bundle that is labelled for no hole yet');
    expect(words).not.toContain('foreign');
  });
});

describe('the panel, F3 and the rod', () => {
  it('show one row: a spare and a bag by hand at their metre, a kept number as kept, and one count of them', async () => {
    const sitting = await drilling();
    sitting.enter(';spare 602 torn');
    sitting.enter(';bag 3-4 710');
    sitting.enter(';recovery none 2-3');
    const spare = table(sitting, 'bags').find(
      ({ kind, fromMm }) => kind === 'primary' && fromMm === 1000,
    )?.number;
    for (const screen of ['log', 'bags']) {
      if (screen === 'bags') sitting.press('f3');
      const words = shown(sitting);
      expect(words).toContain(`${spare}  1–2  by hand`);
      expect(words).toContain('MB000710  3–4  by hand');
      expect(words).toMatch(/MB000603 {2}2–3 {2}kept/);
    }
    sitting.press('escape');
    sitting.press('f2');
    expect(shown(sitting)).toContain('5 bags expected');
    sitting.enter('x5');
    expect(said(sitting)).toContain('Rod 1 done at 6 m, 5 bags and 1 kept without a sample');
    expect(table(sitting, 'rods')[0]).toMatchObject({ bags: 5 });
  });
});
