import { describe, expect, it } from 'vitest';
import { checkProject } from '../../src/check/check-hole.ts';
import { holeNouns } from '../../src/hole/hole.ts';
import { MISMATCHES } from '../../src/sampling/rod/mismatches/registry.ts';
import { streamAheadOf } from '../../src/standing/stream.ts';
import { emptySample, type Sitting, sitDown } from '../console/support/sitting.ts';

/** Two holes of the rig, the second one in hand with one rod done; 613 is kept for a duplicate, 620 for a standard. */
async function secondHole(): Promise<Sitting> {
  const sitting = await sitDown(emptySample());
  sitting.type('n');
  sitting.enter('MBRC019 270g -60 60');
  sitting.press('enter');
  sitting.enter(';numbered MB000501 MB000560');
  sitting.press('f2', 'enter', 'f10');
  sitting.type('n');
  sitting.enter('MBRC020 270g -60 120');
  sitting.press('enter');
  sitting.enter(';numbered MB000601 MB000720');
  sitting.press('f2', 'enter');
  return sitting;
}

const hole = (sitting: Sitting) => sitting.hole('MBRC020');
const said = (sitting: Sitting) => sitting.state().message?.text ?? '';
const shown = (sitting: Sitting) =>
  sitting
    .screen(100, 60)
    .join('\n')
    .replace(/[│\s]+/g, ' ');
const bagFaults = (sitting: Sitting) =>
  checkProject(sitting.state().project, sitting.state().documents.values())
    .filter(({ place }) => place.hole === 'MBRC020')
    .map((each) => each.code)
    .filter((code) => /bag|number|metre-|duplicate|mismatch|control-number/.test(code));
const next = (sitting: Sitting) => streamAheadOf(sitting.state().project, hole(sitting), 1).upcoming[0];

/** The letter that mends it as a kind of mismatch: the first of its ways on the page. */
const letterOf = (sitting: Sitting, name: string) =>
  new RegExp(`([a-d]) (?:mend|fix) as: ${name}`).exec(shown(sitting))?.[1] ?? `no way is ${name}`;

/** What is read in the second rod, the answers to the looks asked for, and the next number that follows once it is mended. */
interface Case {
  readonly code: string;
  readonly read: string;
  readonly answers?: readonly string[];
  readonly nextIs: string;
}

const CASES: readonly Case[] = [
  { code: 'bags-too-few', read: '611 x5', answers: ['n'], nextIs: 'MB000612' },
  { code: 'two-metres-in-one-bag', read: '611 x5', answers: ['y'], nextIs: 'MB000612' },
  { code: 'bags-too-many', read: '614 x8', answers: ['c1'], nextIs: 'MB000615' },
  { code: 'skipped', read: '614 x7', answers: ['607'], nextIs: 'MB000615' },
  { code: 'empty-duplicate', read: '612 x6', nextIs: 'MB000614' },
  { code: 'last-but-one-read', read: '612 x7', answers: ['612 613'], nextIs: 'MB000614' },
  { code: 'closing-bags-swapped', read: '612 x7', answers: ['613 612'], nextIs: 'MB000614' },
  { code: 'foreign', read: 'QQ9999', nextIs: 'MB000614' },
];

describe('a mismatch mended the way that its message names', () => {
  it.each(CASES)(
    '$code leaves no fault, and the next rod fits',
    async ({ code, read, answers = [], nextIs }) => {
      const sitting = await secondHole();
      sitting.press('f2');
      sitting.enter(read);
      for (const answer of answers) if (sitting.state().prompt !== undefined) sitting.enter(answer);
      const kind = MISMATCHES.find((each) => each.code === code);
      if (sitting.state().prompt !== undefined) {
        expect(shown(sitting)).toMatch(/Most likely .* \((over |under )?\d+ in 10\): /);
        sitting.enter(letterOf(sitting, kind?.name ?? ''));
      }
      expect(sitting.state().prompt).toBeUndefined();
      expect(bagFaults(sitting)).toEqual([]);
      expect(next(sitting)?.number).toBe(nextIs);
      const rod = holeNouns(hole(sitting), 'rods').at(-1);
      expect([rod?.depthMm, rod?.read, rod?.unmended]).toEqual([12_000, true, undefined]);
      sitting.press('f2', 'enter');
      expect(bagFaults(sitting)).toEqual([]);
    },
  );

  it('a metre without a bag can be speared into a new one afterwards, with the line that is named', async () => {
    const sitting = await secondHole();
    sitting.press('f2');
    sitting.enter('611 x5');
    sitting.enter('n');
    expect(shown(sitting)).toContain(';bag 46-47 and its number');
    sitting.enter('9-10');
    sitting.enter(';bag 9-10 719');
    expect(holeNouns(hole(sitting), 'bags').find(({ number }) => number === 'MB000719')).toMatchObject({
      kind: 'primary',
      fromMm: 9000,
    });
    expect(bagFaults(sitting)).toEqual([]);
    expect(next(sitting)?.number).toBe('MB000612');
  });

  it('a duplicate that was not caught waits, and ;place puts it in', async () => {
    const sitting = await secondHole();
    sitting.press('f2');
    sitting.enter('612 x6');
    sitting.enter(letterOf(sitting, 'an empty second chute'));
    expect(said(sitting)).toContain('waits, ;place puts it in');
    sitting.enter(';place');
    expect(holeNouns(hole(sitting), 'putOff').filter((put) => put.placedAt === undefined)).toEqual([]);
    sitting.press('f2');
    sitting.enter('619 x6');
    expect(said(sitting)).toContain('Rod 3 done at 18 m');
    expect(bagFaults(sitting)).toEqual([]);
  });
});

describe('bags amended by hand under a mismatch that waits', () => {
  it('are not written over; corrected one by one, the rod is said to fit and nothing waits', async () => {
    const sitting = await secondHole();
    sitting.press('f2');
    sitting.enter('614 x7');
    sitting.press('enter');
    sitting.enter(';spoiled 613 torn');
    sitting.enter(';mend');
    sitting.enter('a');
    expect(said(sitting)).toContain('amended by hand since');
    expect(said(sitting)).toContain(';mend fits');
    sitting.press('escape');
    sitting.enter(';mend fits');
    expect(holeNouns(hole(sitting), 'rods').filter((rod) => rod.unmended === true)).toEqual([]);
    expect(bagFaults(sitting)).toEqual([]);
  });
});

describe('a number of another hole’s run used for a spare', () => {
  it('is named with the line that takes it out there, and that line settles it', async () => {
    const sitting = await secondHole();
    sitting.enter(';spare 603 MB000540 torn');
    const named = () =>
      checkProject(sitting.state().project, sitting.state().documents.values()).filter(
        (each) => each.code === 'bag-not-of-this-hole',
      );
    const [, line = ''] = /there (;spoiled .*)\.$/.exec(named()[0]?.remedy ?? '') ?? [];
    expect(line).toBe(';spoiled MB000540 used in MBRC020');
    sitting.press('f10', 'up', 'enter');
    sitting.enter(line);
    expect(named()).toEqual([]);
    expect(bagFaults(sitting)).toEqual([]);
  });
});
