import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { takeResults } from '../../src/acts/results.ts';
import { dispatchSaid, handOnSaid } from '../../src/console/samples/dispatch.ts';
import { holeNouns } from '../../src/hole/hole.ts';
import { dispatchOf } from '../../src/sampling/dispatch/dispatch-noun.ts';
import { readResults } from '../../src/sampling/laboratory/results-read.ts';
import { SAMPLE } from '../commands/support/outside.ts';
import { emptySample, type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const NAME = 'D2026-03-14-NOK-2';
const shown = (sitting: Sitting, columns = 80, rows = 24): string => sitting.screen(columns, rows).join('\n');
const dispatch = (sitting: Sitting, id = NAME) => {
  const document = sitting.desk.get({ kind: 'dispatch', id });
  return document === undefined || document.tables.dispatch === undefined ? undefined : dispatchOf(document);
};
const atDispatch = async (): Promise<Sitting> => {
  const sitting = await sitDown(sampleFiles(), '2026-03-14T10:00:00+08:00');
  sitting.enter(';dispatch');
  return sitting;
};

describe('the screen of dispatches', () => {
  it('is reached by its word from a hole, by d from the list of holes, and Escape leads back', async () => {
    const sitting = await atDispatch();
    expect(shown(sitting)).toContain('dispatch · 192 bags wait');
    sitting.press('escape');
    expect(sitting.state().screen).toMatchObject({ name: 'log', hole: 'MBRC003' });
    sitting.press('f10');
    sitting.type('d');
    expect(shown(sitting)).toContain('192 bags wait, MB000301 to MB000501: 39 sacks.');
    sitting.press('escape');
    expect(sitting.state().screen.name).toBe('holes');
  });

  it('makes everything that waits up with two Enters', async () => {
    const sitting = await atDispatch();
    sitting.press('enter');
    expect(shown(sitting)).toContain('192 bags in 39 sacks, MB000301 to MB000501, go to Wattlebird Assay.');
    sitting.press('enter');
    expect(dispatch(sitting)?.sacks).toHaveLength(39);
    expect(shown(sitting)).toContain('no bag waits');
    sitting.press('enter');
    expect(shown(sitting)).toContain('make up: no bag waits: every one issued is sent or spoiled.');
  });

  it('takes scanned bags, says at once why one can not go, and keeps what was typed', async () => {
    const sitting = await atDispatch();
    sitting.press('enter');
    sitting.happen({ kind: 'scan', number: 'MB000301' });
    sitting.happen({ kind: 'scan', number: 'MB000303' });
    expect(shown(sitting)).toContain('MB000302 is between bags that go');
    sitting.press('enter');
    expect(dispatch(sitting)).toBeUndefined();
    expect(shown(sitting)).toContain('MB000301 MB000303');
    sitting.happen({ kind: 'scan', number: 'MB000302' });
    sitting.type(' seal T9 to Other Lab');
    sitting.press('enter');
    expect(dispatch(sitting)).toMatchObject({
      laboratory: 'Other Lab',
      sacks: [{ bags: ['MB000301', 'MB000302', 'MB000303'], seal: 'T9' }],
    });
  });

  it('is taken back by undo, and the bags wait again', async () => {
    const sitting = await atDispatch();
    sitting.press('enter', 'enter', 'ctrl-u');
    expect(shown(sitting)).toContain('192 bags wait');
    expect(dispatch(sitting)).toBeUndefined();
  });

  it('records hands as they count; a sack fewer is said and found there, and taken back by undo', async () => {
    const sitting = await atDispatch();
    sitting.press('ctrl-g');
    sitting.type('Wattlebird Assay 33');
    sitting.press('enter');
    sitting.type('y');
    expect(shown(sitting)).toContain('34 were sent: count again with both there');
    expect(shown(sitting)).toMatch(/33 +│\n│ sacks counted, 34 sent\./);
    sitting.press('ctrl-u');
    expect(dispatch(sitting, 'D2026-03-14-NOK')?.transfers).toHaveLength(1);
    sitting.press('ctrl-g');
    sitting.type('Wattlebird Assay 34 169');
    sitting.press('enter');
    sitting.type('y');
    expect(dispatch(sitting, 'D2026-03-14-NOK')?.transfers.at(-1)).toMatchObject({
      from: 'Orla Venn, freight',
      to: 'Wattlebird Assay',
      sacks: 34,
      bags: 169,
      sealsWhole: true,
      recordedBy: 'NOK',
    });
  });

  it('hands on the dispatch that is picked, the latest first', async () => {
    const sitting = await atDispatch();
    sitting.press('enter', 'enter', 'ctrl-g', 'down');
    sitting.type('Wattlebird Assay 34');
    sitting.press('enter');
    sitting.type('y');
    expect(dispatch(sitting, 'D2026-03-14-NOK')?.transfers).toHaveLength(2);
    expect(dispatch(sitting)?.transfers).toHaveLength(0);
  });

  it('asks again where the count is missing', async () => {
    const sitting = await atDispatch();
    sitting.press('ctrl-g');
    sitting.type('Wattlebird Assay');
    sitting.press('enter');
    expect(shown(sitting)).toContain('Type who takes them and how many sacks were counted');
    expect(sitting.state().prompt?.kind).toBe('hand over');
  });

  it('keeps the dispatch through a new opening', async () => {
    const sitting = await atDispatch();
    sitting.press('enter', 'enter');
    const again = await sitting.reopen();
    expect(dispatch(again)?.sacks).toHaveLength(39);
  });
});

describe('what is typed for it', () => {
  it.each([
    ['', {}],
    ['MB1-MB9', { bags: ['MB1-MB9'] }],
    ['MB1 seal S7', { bags: ['MB1 '], firstSeal: 'S7' }],
    ['to North Lab', { laboratory: 'North Lab' }],
    ['seal S7 to North Lab', { firstSeal: 'S7', laboratory: 'North Lab' }],
  ])('%j is %j', (text, said) => {
    expect(dispatchSaid(text)).toEqual(said);
  });

  it.each([
    ['Orla Venn 34', { to: 'Orla Venn', sacks: 34, sealsWhole: true }],
    ['depot 7 34 169 broken', { to: 'depot 7', sacks: 34, bags: 169, sealsWhole: false }],
    ['Orla Venn', undefined],
    ['34', undefined],
  ])('hands: %j is %j', (text, said) => {
    expect(handOnSaid(text)).toEqual(said);
  });
});

describe('the screen of results', () => {
  it('says where they come from while there are none', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(';results');
    expect(shown(sitting)).toContain('offsider results <file.csv> takes a certificate');
  });

  it('lists the certificates, what was found and the charts of the controls, in 80 columns', async () => {
    const sitting = await sitDown(sampleFiles());
    const { project, documents } = sitting.state();
    const columns = project.sampling.results;
    if (columns === undefined) throw new Error('the sample maps no columns');
    const text = readFileSync(join(SAMPLE, 'laboratory/WA26-0417.csv'), 'utf8');
    const { lines } = readResults(
      columns,
      text.split('\r\n').map((each) => each.split(',')),
    );
    const said = { certificate: 'WA1', file: 'WA1.csv', sha256: 'a'.repeat(64), lines };
    const { desk } = sitting;
    const taken = takeResults(documents.values(), columns, said, {
      newId: desk.newId,
      at: desk.now(),
      by: 'NOK',
    });
    if (!taken.ok || 'already' in taken.value) throw new Error('not taken in');
    const { document, made } = taken.value.madeOn;
    desk.submit({ what: made.what, parts: [{ document, changes: made.changes }] });
    const again = await sitting.reopen();
    again.enter(';results');
    const screen = shown(again, 80, 100);
    expect(screen).toContain('returned results · 3 found');
    expect(screen).toContain('WA1  169 samples, taken in 2026-03-14 by NOK');
    expect(screen).toContain('Every bag that was sent has a result.');
    expect(screen).toContain('It reads like K17: was that sachet in the bag?');
    expect(screen).toContain('MB000160     |   :       +       : * |     +2.4 SD  warn');
    expect(screen).toContain('OVER');
    again.type('blank');
    expect(shown(again)).toContain('Blank crushed quartz shows 0.034');
    expect(shown(again)).not.toContain('Standard M04');
  });
});

describe('single metres that results ask for', () => {
  /** The sample turned to composites, a hole of 24 m in bags MB000601 to 606, the third of them over the limit. */
  async function split(): Promise<Sitting> {
    const files = emptySample();
    const settings = JSON.parse(files['project.json'] ?? '');
    settings.sampling.sampled = { rank: 'composite', lengthM: 4 };
    settings.sampling.resplit = { analyte: 'Au', atLeast: 0.5, neighbours: 1, pilesPerRow: 20 };
    const sitting = await sitDown({ ...files, 'project.json': JSON.stringify(settings) });
    sitting.type('n');
    sitting.enter('MBRC020 270g -60 120');
    sitting.press('enter');
    sitting.enter(';numbered MB000601 MB000613');
    for (let rod = 0; rod < 4; rod += 1) sitting.press('f2', 'enter');
    const { desk } = sitting;
    const columns = sitting.state().project.sampling.results;
    if (columns === undefined) throw new Error('the sample maps no columns');
    const { lines } = readResults(columns, [
      ['Sample', 'Au_ppm'],
      ['MB000603', '0.92'],
    ]);
    const said = { certificate: 'WA1', file: 'WA1.csv', sha256: 'a'.repeat(64), lines };
    const taken = takeResults([], columns, said, { newId: desk.newId, at: desk.now(), by: 'NOK' });
    if (!taken.ok || 'already' in taken.value) throw new Error('not taken in');
    const { document, made } = taken.value.madeOn;
    desk.submit({ what: made.what, parts: [{ document, changes: made.changes }] });
    return sitting.reopen();
  }
  const bags = (sitting: Sitting) => holeNouns(sitting.hole('MBRC020'), 'bags');

  it('are shown before they are numbered, with what is missing; then numbered by one Enter and taken back by undo', async () => {
    const sitting = await split();
    sitting.enter(';resplit');
    expect(shown(sitting)).toContain('6 metres have no numbered bag left: ;resplit with the first and last');
    sitting.press('enter');
    expect(bags(sitting)).toHaveLength(6);
    sitting.enter(';resplit MB000614 MB000640');
    expect(shown(sitting)).toContain('12 metres and 2 controls, MB000607 to MB000620.');
    expect(shown(sitting)).toContain('MB000607  4–5  row 1 place 5  MB000602 (no result, neighbour)');
    sitting.press('enter');
    expect(bags(sitting)).toHaveLength(20);
    expect(bags(sitting).filter((bag) => bag.rank === 'composite')).toHaveLength(6);
    sitting.enter(';u');
    expect(bags(sitting)).toHaveLength(6);
    expect(holeNouns(sitting.hole('MBRC020'), 'bagRuns')).toHaveLength(1);
  });

  it('are not asked for where the project has no rule, and what is typed wrongly is said', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(';resplit');
    expect(shown(sitting)).toContain('sampling.resplit in project.json: analyte');
    expect(sitting.state().draft.text).toBe(';resplit');
    sitting.press('escape');
    sitting.enter(';resplit MB000614');
    expect(sitting.state().draft.text).toBe(';resplit MB000614');
    expect(shown(sitting)).toContain('Type the first and the last number labelled for them');
  });
});
