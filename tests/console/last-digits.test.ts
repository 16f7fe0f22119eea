import { describe, expect, it } from 'vitest';
import { takeResults } from '../../src/acts/results.ts';
import { holeNouns } from '../../src/hole/hole.ts';
import { dispatchOf } from '../../src/sampling/dispatch/dispatch-noun.ts';
import { readResults } from '../../src/sampling/laboratory/results-read.ts';
import { emptySample, type Files, type Sitting, sitDown } from './support/sitting.ts';

const HOLE = 'MBRC020';

/** A hole made on the rig, drilling, nothing labelled yet. */
async function drilling(files: Files = emptySample()): Promise<Sitting> {
  const sitting = await sitDown(files);
  sitting.type('n');
  sitting.enter(`${HOLE} 270g -60 120`);
  sitting.press('enter');
  return sitting;
}

const runs = (sitting: Sitting) =>
  holeNouns(sitting.hole(HOLE), 'bagRuns').map(({ first, last }) => `${first} to ${last}`);
const bags = (sitting: Sitting) => holeNouns(sitting.hole(HOLE), 'bags');
const said = (sitting: Sitting) => sitting.state().message?.text ?? '';
const typed = (sitting: Sitting) => sitting.state().draft.text;
const shown = (sitting: Sitting) => sitting.screen(80, 24).join('\n');
const rods = (sitting: Sitting, count: number) => {
  for (let each = 0; each < count; each++) sitting.press('f2', 'enter');
};

describe('the last digits of a bag are enough', () => {
  it.each([
    ';numbered 0601 0720',
    ';numbered 0601 720',
    ';numbered 601 720',
    ';numbered MB0601 mb000720',
    ';numbered mb000601 mb000720',
  ])('%s labels MB000601 to MB000720', async (line) => {
    const sitting = await drilling();
    sitting.enter(line);
    expect(runs(sitting)).toEqual(['MB000601 to MB000720']);
    expect(typed(sitting)).toBe('');
  });

  it('the next free number of the block is meant before all others, and the list of holes takes digits too', async () => {
    const sitting = await drilling();
    sitting.enter(';numbered 1 120');
    expect(runs(sitting)).toEqual(['MB000001 to MB000120']);
    sitting.press('f10');
    sitting.type('b');
    sitting.enter('121 160');
    expect(runs(sitting)).toEqual(['MB000001 to MB000120', 'MB000121 to MB000160']);
  });

  it('of numbers to label that end so the one nearest to the next free one is meant, and one that is labelled already is refused', async () => {
    const sitting = await drilling();
    sitting.enter(';numbered 601 640');
    expect(runs(sitting)).toEqual(['MB000601 to MB000640']);
    sitting.enter(';numbered 620 640');
    expect(said(sitting)).toContain('MB000601 to MB000640 are labelled for MBRC020 already');
    expect(runs(sitting)).toHaveLength(1);
  });

  it('digits that several numbers end in name them, and the line stays to be put right', async () => {
    const sitting = await drilling();
    sitting.enter(';numbered 0601 720');
    for (const line of [';spoiled 13 torn', ';bag standard 13', ';tick 13', ';scan 8 13', ';spare 13 torn']) {
      sitting.enter(line);
      expect(said(sitting), line).toContain('MB000613 and MB000713 end in 13');
      expect(typed(sitting), line).toBe(line);
      sitting.press('escape');
    }
    expect(bags(sitting)).toEqual([]);
    sitting.enter(';spoiled 713 torn');
    expect(bags(sitting).map(({ number, kind }) => `${number} ${kind}`)).toEqual(['MB000713 spoiled']);
  });

  it('a dispatch is typed by them: single ones, a range, and what is doubtful is named while it is typed', async () => {
    const sitting = await drilling();
    sitting.enter(';numbered 0601 0720');
    rods(sitting, 20);
    sitting.enter(';dispatch');
    sitting.press('enter');
    sitting.type('03');
    expect(shown(sitting)).toContain('MB000603 and MB000703 end in 03');
    sitting.press('enter');
    expect(shown(sitting)).toContain('MB000603 and MB000703 end in 03');
    sitting.press('ctrl-u');
    sitting.enter('601-604 605 seal S0413');
    const made = [...sitting.state().documents.values()].find(({ kind }) => kind === 'dispatch');
    if (made === undefined) throw new Error('no dispatch was made up');
    expect(dispatchOf(made).sacks[0]?.bags).toEqual([
      'MB000601',
      'MB000602',
      'MB000603',
      'MB000604',
      'MB000605',
    ]);
  });

  it('labels for single metres are typed by them', async () => {
    const files = emptySample();
    const settings = JSON.parse(files['project.json'] ?? '');
    settings.sampling.sampled = { rank: 'composite', lengthM: 4 };
    settings.sampling.resplit = { analyte: 'Au', atLeast: 0.5, neighbours: 1, pilesPerRow: 20 };
    const before = await drilling({ ...files, 'project.json': JSON.stringify(settings) });
    before.enter(';numbered 0601 613');
    rods(before, 4);
    const { desk } = before;
    const columns = before.state().project.sampling.results;
    if (columns === undefined) throw new Error('the sample maps no columns');
    const { lines } = readResults(columns, [
      ['Sample', 'Au_ppm'],
      ['MB000603', '0.92'],
    ]);
    const certificate = { certificate: 'WA1', file: 'WA1.csv', sha256: 'a'.repeat(64), lines };
    const taken = takeResults([], columns, certificate, { newId: desk.newId, at: desk.now(), by: 'NOK' });
    if (!taken.ok || 'already' in taken.value) throw new Error('not taken in');
    const { document, made } = taken.value.madeOn;
    desk.submit({ what: made.what, parts: [{ document, changes: made.changes }] });
    const sitting = await before.reopen();
    sitting.enter(';resplit 601 640');
    expect(said(sitting)).toContain('labelled for MBRC020 already');
    sitting.press('escape');
    sitting.enter(';resplit 614 640');
    expect(shown(sitting)).toContain('12 metres and 2 controls, MB000607 to MB000620.');
  });
});
