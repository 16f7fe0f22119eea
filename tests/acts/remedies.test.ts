import { describe, expect, it, test } from 'vitest';
import { checkProject } from '../../src/check/check-hole.ts';
import { holeNouns } from '../../src/hole/hole.ts';
import { MISMATCHES } from '../../src/sampling/rod/mismatches/registry.ts';
import { streamAheadOf } from '../../src/standing/stream.ts';
import { emptySample, type Sitting, sitDown } from '../console/support/sitting.ts';

/** Two holes of the rig, the second one in hand with some rods done; 613 is kept for a duplicate, 620 for a standard. */
async function secondHole(rods = 1): Promise<Sitting> {
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
  for (let rod = 0; rod < rods; rod++) sitting.press('f2', 'enter');
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
  new RegExp(`([a-d]) = ${name}`).exec(shown(sitting))?.[1] ?? `no way is ${name}`;

/** What is read in a rod, the answers to the looks asked for, and the next number that follows once it is mended. */
interface Case {
  readonly code: string;
  /** Rods done before it; one where it isn't said. */
  readonly rods?: number;
  /** What is typed before the rod. */
  readonly before?: string;
  readonly read: string;
  readonly answers?: readonly string[];
  readonly nextIs: string;
}

const CASES: readonly Case[] = [
  { code: 'bags-too-few', read: '611 x5', answers: ['n'], nextIs: 'MB000612' },
  { code: 'two-metres-in-one-bag', read: '611 x5', answers: ['y'], nextIs: 'MB000612' },
  { code: 'kept-number-used', before: ';recovery none 9-10', read: '611', nextIs: 'MB000612' },
  { code: 'bags-too-many', read: '614 x8', answers: ['c1'], nextIs: 'MB000615' },
  { code: 'skipped', read: '614 x7', answers: ['607'], nextIs: 'MB000615' },
  { code: 'empty-duplicate', read: '612 x6', nextIs: 'MB000614' },
  { code: 'last-but-one-read', read: '612 x7', answers: ['612 613'], nextIs: 'MB000614' },
  { code: 'closing-bags-swapped', read: '612 x7', answers: ['613 612'], nextIs: 'MB000614' },
  { code: 'rod-above-read', read: '606 x7', nextIs: 'MB000614' },
  { code: 'count-off', read: '613 x5', nextIs: 'MB000614' },
  { code: 'foreign', read: 'QQ9999', nextIs: 'MB000614' },
  { code: 'last-holes-bags', read: '509 x7', nextIs: 'MB000614' },
  { code: 'another-bundle', read: '721 x7', nextIs: 'MB000614' },
  { code: 'used-twice', read: '611 x6', answers: ['607'], nextIs: 'MB000613' },
  { code: 'transposed-digits', read: '631 x7', nextIs: 'MB000614' },
  { code: 'control-forgotten', read: '612 x6', nextIs: 'MB000613' },
  { code: 'control-early', read: '614 x8', answers: ['c2'], nextIs: 'MB000615' },
  { code: 'one-ahead', read: '614 x7', answers: ['608'], nextIs: 'MB000615' },
  { code: 'one-behind', read: '611 x6', answers: ['606'], nextIs: 'MB000612' },
  { code: 'wrong-restart', rods: 2, read: '641 x6', nextIs: 'MB000642' },
  { code: 'depth-mark-out', rods: 2, read: '620 x7 @19', nextIs: 'MB000621' },
  { code: 'spoiled-used', before: ';spoiled 650 torn', read: '650 x7', nextIs: 'MB000614' },
  { code: 'several', read: '613 x9', nextIs: 'MB000614' },
];

test('every kind of mismatch that is named at a rod is mended here; the one without a trace by a scan, below', () => {
  expect([...CASES.map(({ code }) => code), 'duplicate-and-primary-swapped'].sort()).toEqual(
    MISMATCHES.map(({ code }) => code).sort(),
  );
});

describe('a mismatch mended the way that its message names', () => {
  it.each(CASES)(
    '$code leaves no fault, and the next rod fits',
    async ({ code, rods = 1, before, read, answers = [], nextIs }) => {
      const sitting = await secondHole(rods);
      if (before !== undefined) sitting.enter(before);
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
      expect([rod?.depthMm, rod?.read, rod?.unmended]).toEqual([(rods + 1) * 6000, true, undefined]);
      sitting.press('f2', 'enter');
      expect(bagFaults(sitting)).toEqual([]);
    },
  );

  it('a metre without a bag can be speared into a new one afterwards, with the line that is named', async () => {
    const sitting = await secondHole();
    sitting.press('f2');
    sitting.enter('611 x5');
    sitting.enter('n');
    expect(shown(sitting)).toMatch(/;bag \d+-\d+ and its number/);
    sitting.enter('9-10');
    sitting.enter(';bag 9-10 719');
    expect(holeNouns(hole(sitting), 'bags').find(({ number }) => number === 'MB000719')).toMatchObject({
      kind: 'primary',
      fromMm: 9000,
    });
    expect(bagFaults(sitting)).toEqual([]);
    expect(next(sitting)?.number).toBe('MB000612');
  });

  it('a pair on each other’s chute, found by a scan there, is put right by the line that is named', async () => {
    const sitting = await secondHole(2);
    sitting.enter(';scan 11.5 second MB000612');
    const line = /(;swap [A-Z0-9]+)/.exec(shown(sitting))?.[1] ?? 'no line is named';
    expect(shown(sitting)).toContain('duplicate and primary swapped');
    sitting.press('escape');
    sitting.enter(line);
    expect(bagFaults(sitting)).toEqual([]);
    expect(next(sitting)?.number).toBe('MB000614');
    sitting.enter(';scan 11.5 second MB000612');
    expect(shown(sitting)).not.toContain('duplicate and primary swapped');
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
    sitting.enter(';fix');
    sitting.enter('a');
    expect(said(sitting)).toContain('amended by hand since');
    expect(said(sitting)).toContain(';fix fits');
    sitting.press('escape');
    sitting.enter(';fix fits');
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
