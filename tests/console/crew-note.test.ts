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
      'no plod yet: RC7_2026-03-13_DAY',
      'Draft. Type note',
    ])
      expect(screen).toContain(words);
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
});
