import { describe, expect, it } from 'vitest';
import { checkProject } from '../../src/check/check-hole.ts';
import { holeNouns } from '../../src/hole/hole.ts';
import { emptySample, type Files, type Sitting, sitDown } from './support/sitting.ts';

/** A hole drilled one rod and abandoned with labels left over, and another one in hand on the list of holes. */
async function abandoned(files: Files = emptySample()): Promise<Sitting> {
  const sitting = await sitDown(files);
  sitting.type('n');
  sitting.enter('MBRC020 270g -60 24');
  sitting.press('enter');
  sitting.enter(';numbered MB000601 MB000620');
  sitting.press('f2', 'enter');
  sitting.enter(';spare 603 torn');
  sitting.press('f10');
  sitting.type('a');
  sitting.enter('bogged');
  sitting.type('y');
  sitting.type('n');
  sitting.enter('MBRC021 270g -60 24');
  return sitting;
}

const runs = (sitting: Sitting, hole: string) =>
  holeNouns(sitting.hole(hole), 'bagRuns').map(({ first, last }) => `${first.slice(-3)}-${last.slice(-3)}`);

describe('labels left over when a hole is over', () => {
  it('carry on into the next hole of the rig with one key, and the hole keeps those that it used', async () => {
    const sitting = await abandoned();
    sitting.type('b');
    expect(sitting.screen().join('\n')).toContain('Left over from MBRC020: MB000607 to MB000618, MB000620.');
    sitting.press('enter');
    expect(runs(sitting, 'MBRC021')).toEqual(['607-618', '620-620']);
    expect(runs(sitting, 'MBRC020')).toEqual(['601-606', '619-619']);
    const bagFaults = checkProject(sitting.state().project, sitting.state().documents.values())
      .map((each) => each.code)
      .filter((code) => /^bag-|number-used|run/.test(code));
    expect(bagFaults).toEqual([]);
  });

  it('are taken by a word too, and stay with their hole where the project says so', async () => {
    const sitting = await abandoned();
    sitting.press('enter');
    sitting.enter(';numbered rest');
    expect(sitting.state().message?.text).toBe('labels left over from MBRC020 carry on from MB000607');
    const files = emptySample();
    const project = JSON.parse(files['project.json'] ?? '');
    project.sampling.numbers.leftOver = 'stay with their hole';
    const other = await abandoned({ ...files, 'project.json': JSON.stringify(project) });
    other.press('enter');
    other.enter(';numbered rest');
    expect(other.state().message?.text).toContain('leaves labels with the hole');
    expect(other.state().draft.text).toBe(';numbered rest');
  });
});

describe('numbers labelled for a hole', () => {
  it('say how far they last, what of the plan they leave, and which numbers of the block no hole has now', async () => {
    const sitting = await sitDown(emptySample());
    sitting.type('n');
    sitting.enter('MBRC020 270g -60 24');
    sitting.press('enter');
    sitting.enter(';numbered MB000601 MB000620');
    expect(sitting.state().message?.text).toContain(
      'bags MB000601 to MB000620 numbered: they last to 18 m, 6 m short of the 24 m planned',
    );
    sitting.enter(';numbered MB000626 MB000660');
    expect(sitting.state().message?.text).toMatch(
      /numbered: they last to \d+ m; MB000621 to MB000625 are left out, labelled for no hole/,
    );
  });

  it('are taken over by the word rest in the question about them too', async () => {
    const sitting = await abandoned();
    sitting.type('b');
    sitting.enter('rest');
    expect(runs(sitting, 'MBRC021')).toEqual(['607-618', '620-620']);
  });

  it('are one bag where one is left, and the depth for example at a rod lies in that rod', async () => {
    const sitting = await sitDown(emptySample());
    sitting.type('n');
    sitting.enter('MBRC020 270g -60 24');
    sitting.press('enter');
    sitting.enter(';numbered MB000601 MB000607');
    sitting.press('f2', 'enter');
    expect(sitting.screen().join('\n')).toContain('1 numbered bag left');
    sitting.press('f2');
    expect(sitting.screen().join('\n')).toContain('1 bag expected, the last calico is MB000607');
    expect(sitting.screen().join('\n')).toContain('@11.5 for another depth');
  });
});

describe('metres drilled while no label was left', () => {
  it('have their duplicate speared, for the second chute is past; one of the rod to come is caught', async () => {
    const sitting = await sitDown(emptySample());
    sitting.type('n');
    sitting.enter('MBRC020 270g -60 60');
    sitting.press('enter');
    sitting.enter(';numbered MB000601 MB000606');
    sitting.press('f2', 'enter', 'f2', 'enter');
    sitting.enter(';numbered MB000607 MB000660');
    expect(sitting.screen().join('\n')).toContain('MB000613  + duplicate 11–12  spear');
    sitting.press('f2');
    expect(sitting.screen(100, 40).join('\n')).toContain(
      'MB000613  field duplicate 11–12, speared from its pile',
    );
    sitting.press('enter', 'f2', 'enter', 'f2', 'enter', 'f2', 'enter');
    const duplicates = holeNouns(sitting.hole('MBRC020'), 'bags').filter(
      ({ kind }) => kind === 'field duplicate',
    );
    expect(duplicates.map(({ number, method }) => [number.slice(-3), method])).toEqual([
      ['613', 'spear'],
      ['633', 'second chute'],
    ]);
  });
});

describe('bags that come', () => {
  it('are ticked off one after the other with Enter, by range with a word, and stay so', async () => {
    const sitting = await sitDown(emptySample());
    sitting.type('n');
    sitting.enter('MBRC020 270g -60 24');
    sitting.press('enter');
    sitting.enter(';numbered MB000601 MB000620');
    sitting.press('f3');
    sitting.press('down', 'enter', 'enter');
    const ticks = () => holeNouns(sitting.hole('MBRC020'), 'ticks').map(({ number }) => number.slice(-3));
    expect(ticks()).toEqual(['601', '602']);
    expect(sitting.screen().join('\n')).toMatch(/\[[^ ]\] MB000602/);
    expect(sitting.screen().join('\n')).toContain('18 of 20 left');
    sitting.press('up', 'enter');
    expect(ticks()).toEqual(['601']);
    sitting.press('escape');
    sitting.enter(';tick 601-610');
    expect(ticks()).toHaveLength(10);
    sitting.enter(';tick 610');
    expect(ticks()).toHaveLength(9);
    const again = await sitting.reopen();
    expect(holeNouns(again.hole('MBRC020'), 'ticks')).toHaveLength(9);
  });
});
