import { describe, expect, it } from 'vitest';
import { unfinishedIn } from '../../src/standing/unfinished.ts';
import { emptySample, type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

/** A hole drilling with a rod done, in a shift that drills since 08:00. */
async function drilling(): Promise<Sitting> {
  const sitting = await sitDown(emptySample(), '2026-03-14T08:00:00+08:00');
  sitting.type('n');
  sitting.enter('MBRC020 270g -60 120');
  sitting.press('enter');
  sitting.enter(';numbered MB000601 MB000720');
  sitting.enter(';activity begin 06:00');
  sitting.enter(';activity drilling 08:00');
  sitting.wait(20);
  sitting.press('f2', 'enter');
  return sitting;
}

/** The disk has taken everything. */
const saved = (sitting: Sitting) => sitting.happen({ kind: 'health', health: { pending: 0 } });

const words = (sitting: Sitting): string =>
  sitting
    .screen(80, 24)
    .join(' ')
    .replace(/[│\s]+/g, ' ');

function items(sitting: Sitting): string {
  const { project, documents, now } = sitting.state();
  const all = [...documents.values()];
  return unfinishedIn({ project, documents: all, now }, all)
    .flatMap(({ name, items: each }) => each.map((item) => `${name}: ${item}`))
    .join('\n');
}

describe('what is not finished', () => {
  it('is named: time without an activity, no plod, bags on the ground, metres drilled and not logged', async () => {
    const sitting = await drilling();
    expect(items(sitting)).toContain('RC7_2026-03-14_DAY: 06:00–08:00, 2:00 h, has no activity.');
    expect(items(sitting)).toContain('RC7_2026-03-14_DAY: No plod is recorded.');
    expect(items(sitting)).toContain('bags are on the ground, MB000601 to');
    expect(items(sitting)).toContain('MBRC020: 0–6 is not logged.');
  });

  it('is named where more is logged than any rod says is drilled', async () => {
    const sitting = await drilling();
    sitting.enter('bawx1ox1');
    for (let metre = 1; metre < 10; metre += 1) sitting.enter('.');
    expect(items(sitting)).toContain('MBRC020: 6–10 is logged and no rod is recorded for it');
  });

  it('goes into the list of what is packed, of the sample too', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T10:00:00+08:00');
    sitting.enter(';pack');
    await new Promise((resolve) => setTimeout(resolve, 0));
    expect(items(sitting)).toMatch(/MBRC002A: \d+ bags are on the ground/);
  });
});

describe('a breakdown that was left open', () => {
  async function brokenDown(): Promise<Sitting> {
    const sitting = await drilling();
    sitting.wait(20);
    sitting.enter(';activity breakdown hose');
    sitting.wait(40);
    return sitting;
  }

  it('is said at the rod that is done in it, before and after', async () => {
    const sitting = await brokenDown();
    sitting.press('f2');
    expect(words(sitting)).toContain('The shift record says Breakdown since 08:40');
    sitting.press('enter');
    expect(sitting.state().message?.text).toContain('The shift record says Breakdown since 08:40');
  });

  it('is not said once drilling goes on', async () => {
    const sitting = await brokenDown();
    sitting.enter(';activity drilling');
    sitting.press('f2');
    expect(words(sitting)).not.toContain('The shift record says');
  });

  it('is named with its rods at the end of the hole, at the end of the shift and on leaving, and each goes on by Enter', async () => {
    const sitting = await brokenDown();
    for (let rod = 0; rod < 4; rod += 1) sitting.press('f2', 'enter');
    const stood = 'MBRC020: 6–30 m, 4 rods, were drilled while the record says Breakdown, since 08:40';
    expect(items(sitting)).toContain(stood);
    sitting.press('f12', 'enter');
    expect(words(sitting)).toContain(stood);
    sitting.press('escape');
    saved(sitting);
    sitting.enter(';q');
    expect(sitting.left()).toBe(0);
    expect(words(sitting)).toContain(stood);
    expect(words(sitting)).toContain('Breakdown goes on since 08:40');
    sitting.press('enter');
    expect(sitting.left()).toBe(1);
    sitting.enter(';activity end 09:20');
    expect(words(sitting)).toContain(stood);
    const shift = () => sitting.state().documents.get('shift/RC7_2026-03-14_DAY')?.tables.shift?.shift;
    expect(shift()).not.toHaveProperty('endedAt');
    sitting.press('enter');
    expect(shift()).toHaveProperty('endedAt');
  });
});

describe('leaving', () => {
  it('asks while an activity goes on, and the word end ends the shift first', async () => {
    const sitting = await drilling();
    saved(sitting);
    sitting.enter(';q');
    expect(sitting.left()).toBe(0);
    expect(words(sitting)).toContain('Drilling goes on since 08:00, 0:20 h: the shift of RC7 is not ended.');
    sitting.enter('end');
    expect(sitting.state().prompt).toMatchObject({ kind: 'shift line' });
    sitting.press('enter');
    saved(sitting);
    sitting.enter(';q');
    expect(sitting.left()).toBe(1);
  });
});

it('the end of a hole names rows that stand below the depth that is given', async () => {
  const sitting = await drilling();
  sitting.enter('bawx1ox1');
  for (let metre = 1; metre < 12; metre += 1) sitting.enter('.');
  sitting.press('f12', 'enter');
  expect(words(sitting)).toContain('6–12 is logged below the final depth given, in 6 rows.');
});
