import { describe, expect, it } from 'vitest';
import { shiftThings } from '../../src/shift/shift.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const notes = (sitting: Sitting) => {
  const shift = sitting.state().documents.get('shift/RC7_2026-03-14_DAY');
  return shift === undefined ? [] : shiftThings(shift, 'crewNotes').map(([, note]) => note);
};
const said = (sitting: Sitting): string => sitting.state().message?.text ?? '';
const text = (sitting: Sitting): string => sitting.screen(100, 60).join('\n');

describe('the note for the next crew', () => {
  it('is drafted from the records: holes with where they stand, bags, stock, collars, plods', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T17:30:00+08:00');
    sitting.press('f8', 'tab', 'tab');
    const screen = text(sitting);
    for (const words of [
      'MBRC003, drilling',
      'drilled to 54 m, logged to 46 m',
      'shot due at',
      'next bag ',
      'Control stock',
      'RC7_2026-03-13_DAY: No plod is recorded.',
      'Draft. Type note',
    ])
      expect(screen).toContain(words);
  });

  it('says what water was met in the shift', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T17:30:00+08:00');
    sitting.press('f8');
    sitting.enter('water 16:00 27 strong');
    sitting.press('tab', 'tab');
    expect(text(sitting).replaceAll(/[│\s]+/g, ' ')).toContain(
      'Water met MBRC003 at 27 m, 2026-03-14 16:00: strong',
    );
  });

  it('is shown by ;note from the log, and completed by ;note with words behind it', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T17:30:00+08:00');
    sitting.enter(';note');
    expect(text(sitting)).toContain('note for the next crew · RC7_2026-03-14_DAY');
    sitting.press('escape');
    sitting.enter(';note water truck at 07:00');
    expect(notes(sitting)[0]).toMatchObject({ by: 'NOK', added: 'water truck at 07:00' });
  });

  it('says which metres of the shift came up wet, as they are paid with a surcharge', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T17:30:00+08:00');
    sitting.enter(';wet 50-52');
    sitting.press('f8', 'tab', 'tab');
    expect(text(sitting).replaceAll(/[│\s]+/g, ' ')).toMatch(/MBRC003 wet 2 m, in 50–52 m/);
  });

  it('says which metres the driller’s sheet calls wet, beside those', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T17:30:00+08:00');
    sitting.press('f8', 'ctrl-p');
    for (const line of ['0414', '0700-0730 d MBRC003 0-12 wet6-12', '', '']) sitting.enter(line);
    sitting.press('tab');
    expect(text(sitting).replaceAll(/[│\s]+/g, ' ')).toContain('plod 0414 calls 6–12 m of MBRC003 wet');
  });

  it('is completed by the outgoing geologist and acknowledged by the incoming one only', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T17:30:00+08:00');
    sitting.press('f8');
    sitting.enter('acknowledge');
    expect(said(sitting)).toContain('No note was completed.');
    sitting.press('escape');
    sitting.enter('note water truck at 07:00');
    expect(notes(sitting)[0]).toMatchObject({ by: 'NOK', added: 'water truck at 07:00' });
    expect(notes(sitting)[0]?.draft.map(({ title }) => title)).toContain('MBRC003, drilling');
    sitting.enter('acknowledge');
    expect(said(sitting)).toContain('NOK wrote it.');
    const next = await sitting.reopen('MTA');
    next.press('f8');
    next.enter('acknowledge');
    expect(notes(next)[0]).toMatchObject({ by: 'NOK', acknowledgedBy: 'MTA' });
    next.press('tab', 'tab');
    expect(text(next)).toContain('acknowledged by MTA');
    next.press('ctrl-u');
    expect(notes(next)[0]?.acknowledgedBy).toBeUndefined();
  });

  it('has the bags that wait by row and place, and what broke down with what was said of it', async () => {
    const files = sampleFiles();
    const settings = JSON.parse(files['project.json'] ?? '');
    const laid = { ...settings, sampling: { ...settings.sampling, bagsPerRow: 20 } };
    const sitting = await sitDown(
      { ...files, 'project.json': JSON.stringify(laid) },
      '2026-03-14T17:30:00+08:00',
    );
    sitting.press('f8');
    sitting.enter('breakdown 14:20-14:50 hydraulic hose');
    sitting.press('tab', 'tab');
    const screen = sitting.screen(100, 90).join('\n');
    expect(screen).toContain('Breakdown 2026-03-14 14:20, 0:30 h: hydraulic hose');
    expect(screen).toMatch(/MBRC003 row 1, places 1–20: 2\d bags, MB\d+ to MB\d+/);
    expect(screen).toMatch(/MBRC003 row 3, places 1–14: 1\d bags/);
  });

  it('for a swing begins with what was done since it began, and is completed and acknowledged like the other', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T17:30:00+08:00');
    sitting.press('f8', 'tab', 'tab', 'tab');
    expect(text(sitting)).toContain('note for the next crew, swing');
    expect(text(sitting)).toContain('Swing from 2026-03-12');
    expect(text(sitting)).toMatch(/3 shifts, geologists NOK/);
    expect(text(sitting)).toMatch(/\d+ m drilled: MBRC001 150 m, MBRC002 24 m, MBRC002A 90 m, MBRC003 54 m/);
    expect(text(sitting)).toContain('plods not signed: 0412');
    sitting.enter('note swing gear list on the desk');
    expect(said(sitting)).toBe('note for the next crew, swing from 2026-03-12, completed by NOK');
    expect(notes(sitting)[0]).toMatchObject({ swingFrom: '2026-03-12', added: 'gear list on the desk' });
    sitting.enter('note swing 2026-03-13');
    expect(notes(sitting)[1]).toMatchObject({ swingFrom: '2026-03-13' });
    const swing = notes(sitting)[1]?.draft.find(({ title }) => title === 'Swing from 2026-03-13');
    expect(swing?.lines[0]).toContain('2 shifts');
    expect(notes(sitting)[1]?.draft[0]).toEqual({
      title: 'Dangers met',
      lines: ['MBRC001: no return 118–119'],
    });
  });
});
