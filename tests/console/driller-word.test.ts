import { describe, expect, it } from 'vitest';
import { holeNouns } from '../../src/hole/hole.ts';
import { type Files, type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const AT = '2026-03-14T09:08:00+08:00';
const HOLE = 'MBRC003';
const text = (sitting: Sitting, columns = 100, rows = 44): string =>
  sitting.screen(columns, rows).join('\n').replaceAll(/\s+/g, ' ');

/** The sample project with a void rule that takes the driller's word. */
function takingTheWord(): Files {
  const files = sampleFiles();
  const project = files['project.json'] ?? '';
  const changed = project.replace(/("voidNear":\s*\{)/, '$1 "drillersWord": true,');
  expect(changed).not.toBe(project);
  return { ...files, 'project.json': changed };
}

describe('the driller’s word at the rod', () => {
  it('is noted with the rod by one letter, over its metres, with who wrote it down', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.press('f2');
    expect(text(sitting)).toContain('n driller: no cavity felt');
    sitting.type('csn');
    expect(text(sitting)).toContain('driller: no cavity felt, cyclone cleaned, splitter cleaned');
    sitting.press('enter');
    expect(holeNouns(sitting.hole(HOLE), 'feltByDriller')).toEqual([
      { fromMm: 54_000, toMm: 60_000, felt: 'solid', at: expect.any(String), by: 'NOK' },
    ]);
    sitting.press('f9');
    expect(text(sitting)).toContain('rod 10 done at 60 m; driller: no cavity felt');
  });

  it('is no log: a rule that does not take it goes on asking, and says so', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter(';solid 46-54 Mick Tarrant');
    expect(sitting.state().message?.text).toContain('driller: no cavity felt at 46–54 (Mick Tarrant)');
    sitting.press('f5');
    expect(text(sitting).replaceAll(/[│\s]+/g, ' ')).toMatch(
      /ASK: void: .*word on 46–54 does not count for this rule/,
    );
  });

  it('lets a rule that takes it rest on it, says that beside the verdict, and is taken back by undo', async () => {
    const sitting = await sitDown(takingTheWord(), AT);
    expect(text(sitting)).toContain('ASK: void');
    sitting.enter(';solid 46-54 Mick Tarrant');
    const panel = sitting
      .screen(80, 24)
      .map((each) => each.slice(49, 79).trim())
      .join(' ');
    expect(panel).toContain('46–54 by the driller’s word alone, not logged.');
    sitting.press('f5');
    expect(text(sitting)).not.toContain('ASK: void');
    expect(text(sitting)).toContain('void: 46–54 by the driller’s word alone, not logged');
    sitting.press('ctrl-u');
    expect(holeNouns(sitting.hole(HOLE), 'feltByDriller')).toEqual([]);
    expect(text(sitting)).toContain('ASK: void');
  });

  it.each([
    ['solid', 'NOK', 'NOK is you: it takes someone else'],
    ['solid', 'Joss Penhale', 'Joss Penhale is a field assistant, not the driller'],
    ['cavity', 'x', '“x” names no one'],
  ])('is the driller’s: ;%s from %s is refused, and the line kept', async (word, name, problem) => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter(`;${word} 46-54 ${name}`);
    expect(text(sitting)).toContain(problem);
    expect(text(sitting, 80, 24)).toContain(`without one ;${word} means the driller at the rig.`);
    expect(sitting.state().draft.text).toBe(`;${word} 46-54 ${name}`);
    expect(holeNouns(sitting.hole(HOLE), 'feltByDriller')).toEqual([]);
  });

  it('that all was solid over a logged void is asked first, with the driller’s name; the void still counts', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter('vr');
    for (const line of [';solid 46-54', ';solid 46-54 =', ';solid 46-54 Mick Tarrant']) {
      sitting.enter(line);
      expect(text(sitting, 80, 24)).toContain('A void is logged at 46–47');
      expect(text(sitting, 80, 24)).toContain('If all were: ;solid 46-54 Mick Tarrant =');
      expect(holeNouns(sitting.hole(HOLE), 'feltByDriller')).toEqual([]);
      sitting.press('escape');
    }
    sitting.enter(';solid 46-54 Mick Tarrant =');
    expect(sitting.state().message?.text).toContain('the void logged at 46–47 still counts');
    expect(holeNouns(sitting.hole(HOLE), 'feltByDriller')).toMatchObject([
      { felt: 'solid', driller: 'Mick Tarrant' },
    ]);
  });

  it('of a cavity is a danger at once, whatever the rule takes', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter(';cavity 50-51');
    sitting.press('f5');
    expect(text(sitting)).toContain('! ASK: void: cavity felt by the driller at 50–51, 3 m above the bit');
  });

  it('that none was felt takes back no cavity, not on its very metres; the record is taken out by hand', async () => {
    const sitting = await sitDown(takingTheWord(), AT);
    sitting.enter(';cavity 50-51 Mick');
    for (const word of [';solid 46-54 Mick', ';solid 50-51 Mick']) {
      sitting.enter(word);
      expect(sitting.state().message?.text).toContain(
        'the cavity felt at 50–51 still counts (;cavity 50-51 wrong if it was none)',
      );
      sitting.press('f5');
      expect(text(sitting)).toContain('! ASK: void: cavity felt by the driller at 50–51');
      sitting.press('escape');
    }
    sitting.enter(';cavity 50-52 wrong');
    expect(sitting.state().message?.text).toContain('Give its own metres: ;cavity 50-51 wrong.');
    sitting.press('ctrl-u');
    sitting.press('escape');
    sitting.enter(';cavity 50-51 wrong');
    expect(sitting.state().message?.text).toContain('cavity at 50–51 taken out: it was none');
    sitting.press('f5');
    expect(text(sitting)).not.toContain('ASK: void');
  });

  it('stands for no metre where a void was logged and cleared, until it is logged again', async () => {
    const sitting = await sitDown(takingTheWord(), AT);
    sitting.enter('vr');
    sitting.enter(';solid 46-54 Mick =');
    sitting.enter(';clear 46-47 =');
    sitting.press('f5');
    expect(text(sitting)).toContain('ASK: void: can’t tell');
    expect(text(sitting).replaceAll(/[│\s]+/g, ' ')).toContain('a void was logged at 46–47 and cleared');
  });

  it('of a cavity goes on asking where the decision to go on names no one who was called, and says so', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter(';cavity 50-51');
    sitting.enter(';extend 6 m more, all fine');
    expect(sitting.state().message?.text).toContain('void still asks: going on settles no danger');
    sitting.press('f5');
    expect(text(sitting)).toContain('! ASK: void: cavity felt by the driller at 50–51');
    sitting.press('escape');
    sitting.enter(';extend called Ines Falk: 6 m more, mine looked at it');
    expect(sitting.state().message?.text).toContain('void still asks: going on settles no danger');
    sitting.press('f5');
    expect(text(sitting)).toContain('! ASK: void: cavity felt by the driller at 50–51');
    expect(text(sitting).replaceAll(/[│\s]+/g, ' ')).toContain('Ines Falk called by');
    expect(text(sitting).replaceAll(/[│\s]+/g, ' ')).toContain('The hole goes on to 60 m');
  });

  it('is refused below the bit', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter(';solid 46-60');
    expect(text(sitting)).toContain('46–60 is not all in the hole');
    expect(holeNouns(sitting.hole(HOLE), 'feltByDriller')).toEqual([]);
  });

  it('of a cavity is taken while it happens, below the last rod and the log, and counts from there', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter(';cavity 56-57 Mick Tarrant');
    expect(sitting.state().message?.text).toContain('driller: CAVITY felt at 56–57 (Mick Tarrant)');
    sitting.press('f5');
    expect(text(sitting)).toContain('! ASK: void: cavity felt by the driller at 56–57, at the bit');
  });

  it('without metres is of now: from the last rod down to the log, never the rod before', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    for (let metre = 46; metre < 57; metre++) sitting.enter('.');
    sitting.enter(';cavity');
    sitting.enter(';solid');
    expect(holeNouns(sitting.hole(HOLE), 'feltByDriller')).toMatchObject([
      { fromMm: 54_000, toMm: 57_000, felt: 'cavity' },
      { fromMm: 54_000, toMm: 57_000, felt: 'solid' },
    ]);
  });

  it('of a cavity asks for the metres where nothing is logged below the last rod', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter(';cavity');
    expect(text(sitting)).toContain('Which metres?');
    expect(text(sitting)).toContain(';cavity 54-55 of now, or ;cavity 48-54 of the last rod');
    expect(holeNouns(sitting.hole(HOLE), 'feltByDriller')).toEqual([]);
    sitting.press('escape');
    sitting.enter(';solid 54-58');
    expect(text(sitting)).toContain('say it when the rod is done');
  });

  it('stands in the note for the next crew, with who said it and when, and that it is not a log', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter(';solid 48-54 Mick Tarrant');
    sitting.press('f8', 'tab', 'tab');
    expect(text(sitting)).toContain(
      'driller: no cavity felt at 48–54 (Mick Tarrant), recorded by NOK 09:08: no log',
    );
  });

  it('is kept by the file, in the format that says so', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter(';solid');
    const again = await sitting.reopen();
    expect(holeNouns(again.hole(HOLE), 'feltByDriller')).toMatchObject([
      { fromMm: 48_000, toMm: 54_000, felt: 'solid', by: 'NOK' },
    ]);
  });
});
