import { describe, expect, it } from 'vitest';
import { holeNouns } from '../../src/hole/hole.ts';
import { NEAR_SPLITTER } from '../../src/sampling/rod/mismatch.ts';
import { checkBags } from '../../src/sampling/stream/bags-check.ts';
import { issue } from '../../src/sampling/stream/issue.ts';
import { bagRunOf } from '../../src/standing/bag-run.ts';
import { nextRod } from '../../src/standing/rods.ts';
import { streamStateOf } from '../../src/standing/stream.ts';
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

describe('numbers labelled for a hole', () => {
  it('are refused where one of them is labelled already, with the number to go on from', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(';numbered MB000130 MB000140');
    expect(said(sitting)).toContain('MB000121 to MB000300 are labelled for MBRC001 already');
    expect(said(sitting)).toContain('MB000601 comes after every number labelled so far.');
    sitting.press('escape');
    sitting.enter(';numbered MB000590 MB000700');
    expect(said(sitting)).toContain('labelled for MBRC003 already');
    sitting.press('escape');
    expect(holeNouns(sitting.hole('MBRC003'), 'bagRuns')).toHaveLength(1);
    sitting.enter(';numbered MB000601 MB000700');
    expect(holeNouns(sitting.hole('MBRC003'), 'bagRuns')).toHaveLength(2);
  });
});

describe('numbering the bags of a hole the evening before', () => {
  it('takes the numbers that come next, enough down to the plan, and shows the bag run without starting the hole', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.press('f10', 'down', 'b');
    expect(shown(sitting)).toContain('bags of MBRC004');
    expect(shown(sitting)).toContain('No numbered bags yet for 130 m of the way down to 130 m.');
    // Labels left over from holes that are over come first.
    for (let holes = 0; holes < 5 && shown(sitting).includes('Left over from'); holes++)
      sitting.press('enter', 'escape', 'b');
    expect(shown(sitting)).toContain('Next in the block: MB000601 to MB000');
    sitting.press('enter');
    const planned = sitting.hole('MBRC004');
    expect(holeNouns(planned, 'drilling')).toEqual([]);
    expect(holeNouns(planned, 'bagRuns').length).toBeGreaterThan(1);
    expect(holeNouns(planned, 'bagRuns').at(-1)).toMatchObject({ first: 'MB000601', rig: 'RC7' });
    expect(bagRunOf(sitting.state().project, planned).shortMm).toBe(0);
    expect(shown(sitting)).toMatch(/\[ \] MB000\d{3} {2}0–1/);
    sitting.press('escape');
    expect(sitting.state().screen.name).toBe('holes');
    sitting.press('b');
    expect(shown(sitting)).toMatch(/The \d+ numbered bags that come are enough down to 130 m\./);
  });
});

describe('water in what was weighed', () => {
  it('is left out of recovery, and is refused where it is not a percent', async () => {
    const sitting = await drilling();
    sitting.press('f2', 'enter');
    sitting.enter(';mass 1-2 bulk 38.2 split 3.1');
    sitting.press('f3');
    expect(shown(sitting)).not.toContain('LOW');
    sitting.press('escape');
    sitting.enter(';mass 1-2 moisture 40');
    expect(holeNouns(hole(sitting), 'stream').at(-1)).toMatchObject({ bulkG: 38_200, waterPermille: 400 });
    sitting.press('f3');
    sitting.type('recovery by metre');
    expect(shown(sitting)).toMatch(/1–2 +██████░░░░ +60 % LOW/);
    sitting.press('escape', 'escape');
    sitting.enter(';mass 1-2 moisture 400');
    expect(said(sitting)).toContain('This is not a percentage of water.');
  });
});

describe('a control announced on the smallest screen', () => {
  it('never loses in how many metres it is due', async () => {
    const sitting = await drilling();
    sitting.press('f2', 'enter');
    expect(sitting.screen(80, 24).join('\n')).toMatch(/MB000613 {2}\+ dup 11–12 in 5 m/);
    expect(sitting.screen(100, 30).join('\n')).toMatch(/MB000613 {2}\+ duplicate 11–12 {2}in 5 m/);
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

const hole = (sitting: Sitting) => sitting.hole('MBRC020');

/** The bags that the next rod should give. */
const expected = (sitting: Sitting) =>
  issue(sitting.state().project.sampling, streamStateOf(hole(sitting), nextRod(hole(sitting)).depthMm));

/** The last digits of a number so many further on. */
const further = (number: string | undefined, by: number) => String(Number(number?.slice(2)) + by).slice(-3);

const unmended = (sitting: Sitting) =>
  holeNouns(hole(sitting), 'rods').filter((rod) => rod.unmended === true).length;

const faults = (sitting: Sitting) => {
  const [bags, bagRuns, choices] = [
    holeNouns(hole(sitting), 'bags'),
    holeNouns(hole(sitting), 'bagRuns'),
    holeNouns(hole(sitting), 'controlChoices'),
  ];
  return checkBags(sitting.state().project.sampling, [{ hole: 'MBRC020', bags, bagRuns, choices }]);
};

/** A rod in which a number was skipped, noted and gone on from; the next rod is a number ahead, and noted too. */
async function twoNoted(): Promise<Sitting> {
  const sitting = await drilling();
  sitting.press('f2', 'enter');
  for (let rod = 0; rod < 2; rod++) {
    const bags = expected(sitting);
    sitting.press('f2');
    sitting.enter(`${further(bags.at(-1)?.number, 1)} x${bags.length}`);
    sitting.press('enter');
  }
  return sitting;
}

describe('a mismatch noted at the rod', () => {
  it('stays in sight, on the panel and on the screen of bags, until it is mended', async () => {
    const sitting = await twoNoted();
    expect(said(sitting)).toBe('Rod recorded as expected; the mismatch is noted and open: ;fix.');
    expect(shown(sitting)).toContain('rod 2: a number skipped? ;fix');
    sitting.press('f3');
    expect(shown(sitting)).toContain(
      'rod 2 at 12 m: the bags don’t match, a number skipped? ;fix shows the ways',
    );
  });

  it('is mended later as one edit, and the rods below that follow from it with it', async () => {
    const sitting = await twoNoted();
    const before = hole(sitting).tables;
    expect(unmended(sitting)).toBe(2);
    sitting.enter(';fix');
    expect(shown(sitting)).toContain('rod 2 noted before');
    expect(shown(sitting)).toContain('a = a number skipped');
    sitting.enter('a');
    expect(unmended(sitting)).toBe(0);
    expect(faults(sitting)).toEqual([]);
    const bags = holeNouns(hole(sitting), 'bags');
    expect(bags.filter((bag) => bag.kind === 'spoiled')).toHaveLength(1);
    const metres = bags.filter((bag) => bag.kind === 'primary').map((bag) => bag.fromMm);
    expect([...metres].sort((a, b) => Number(a) - Number(b))).toEqual(
      Array.from({ length: 18 }, (_, m) => m * 1000),
    );
    sitting.enter(';u');
    expect(hole(sitting).tables).toEqual(before);
    sitting.enter(';fix');
    sitting.press('enter');
    expect(hole(sitting).tables).toEqual(before);
    expect(said(sitting)).toContain('still open');
  });

  it('is not mended over what someone wrote of a bag since', async () => {
    const sitting = await twoNoted();
    sitting.enter(`;spoiled ${holeNouns(hole(sitting), 'bags').at(-1)?.number} torn`);
    sitting.enter(';fix');
    sitting.enter('a');
    expect(said(sitting)).toContain('amended by hand since');
    expect(unmended(sitting)).toBe(2);
  });
});

describe('the places of a mismatch', () => {
  it('go on over pages where there are more than fit', async () => {
    const sitting = await twoNoted();
    sitting.enter(';fix');
    const first = shown(sitting);
    expect(first).toContain('m more (1 of ');
    sitting.enter('m');
    expect(shown(sitting)).toContain('m more (2 of ');
    expect(shown(sitting)).toContain('a = ');
  });
});

describe('a bag compared with where it lies', () => {
  it('agrees in its metre, and is named by how far it is off elsewhere', async () => {
    const sitting = await drilling();
    sitting.press('f2', 'enter');
    sitting.enter(';scan 2.5 MB000603');
    expect(said(sitting)).toBe('MB000603 is the primary 2–3, and is where it belongs.');
    sitting.enter(';scan 3 603');
    expect(shown(sitting)).toContain('MB000603 is primary 2–3: the stream is one behind.');
  });

  it('is taken from a scanner behind a place that is typed once', async () => {
    const sitting = await drilling();
    sitting.press('f2', 'enter');
    sitting.type(';scan 2 ');
    sitting.happen({ kind: 'scan', number: 'MB000604' });
    expect(shown(sitting)).toContain('MB000604 is primary 3–4: the stream is ahead.');
    expect(sitting.state().draft.text).toBe(';scan 2 ');
  });

  it.each([
    [';numbered MB000601 ', 'MB000720\r'],
    [';numbered MB000601 MB000720\r', ''],
    [';bag 3-4 spare ', 'MB000699\r'],
  ])('is filled into the words that wait for it, however the keys arrive: %j, %j', async (first, second) => {
    const expected = await sitDown(sampleFiles());
    const sitting = await sitDown(sampleFiles());
    expected.press('enter');
    sitting.press('enter');
    expected.enter(`${first}${second}`.replace('\r', ''));
    sitting.burst(first);
    sitting.burst(second);
    expect(sitting.state().prompt).toEqual(expected.state().prompt);
    expect(sitting.state().message?.text).toBe(expected.state().message?.text);
    expect(sitting.state().draft.text).toBe(expected.state().draft.text);
  });

  it('is told whole on the smallest screen, the driller’s word with it, and takes no key from the line', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.happen({ kind: 'scan', number: 'MB000129' });
    const words = sitting
      .screen(80, 24)
      .join(' ')
      .replace(/[│\s]+/g, ' ');
    expect(words).toContain("MB000129 is labelled for MBRC001: another hole's bags.");
    expect(words).toContain(NEAR_SPLITTER);
    sitting.type('p3');
    expect(sitting.state().prompt).toBeUndefined();
    expect(sitting.state().draft.text).toBe('p3');
  });

  it('under the wrong chute is the duplicate swapped with its primary, which one edit writes down', async () => {
    const sitting = await drilling();
    sitting.press('f2', 'enter', 'f2', 'enter', 'f2', 'enter');
    const twin = holeNouns(hole(sitting), 'bags').find((bag) => bag.kind === 'field duplicate');
    const metre = (twin?.fromMm ?? 0) / 1000;
    sitting.enter(`;scan ${metre} first ${twin?.number}`);
    expect(shown(sitting)).toContain('duplicate and primary swapped');
    sitting.enter(`;swap ${twin?.number}`);
    const bags = holeNouns(hole(sitting), 'bags');
    const [now, other] = [twin?.number, twin?.of].map((number) => bags.find((bag) => bag.number === number));
    expect([now?.kind, now?.of, other?.kind, other?.of]).toEqual([
      'primary',
      undefined,
      'field duplicate',
      twin?.number,
    ]);
    expect([now?.fromMm, other?.fromMm]).toEqual([twin?.fromMm, twin?.fromMm]);
    expect(faults(sitting)).toEqual([]);
    sitting.enter(`;scan ${metre} first ${twin?.number}`);
    expect(said(sitting)).toContain('is where it belongs');
  });
});
