import { describe, expect, it } from 'vitest';
import { checkHole } from '../../src/check/check-hole.ts';
import { headerOf } from '../../src/hole/hole.ts';
import { crewNote } from '../../src/standing/crew-note.ts';
import { unfinishedIn } from '../../src/standing/unfinished.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const HOLE = 'MBRC004';
const shown = (sitting: Sitting, columns = 80, rows = 24) =>
  sitting.screen(columns, rows).join(' ').replace(/\s+/g, ' ');
const said = (sitting: Sitting) => sitting.state().message?.text ?? '';
const documents = (sitting: Sitting) => [...sitting.state().documents.values()];
/** What the check says of its line-up. */
const found = (sitting: Sitting) =>
  checkHole(sitting.state().project, sitting.hole(HOLE), documents(sitting)).filter(
    ({ code }) => code === 'line-up-missing',
  );
/** What the note for the next crew and the letter to camp say of it. */
function passedOn(sitting: Sitting): { readonly note: string; readonly letter: string } {
  const { project, now } = sitting.state();
  const note = crewNote(project, documents(sitting), 'RC7', now).flatMap(({ lines }) => lines);
  const open = unfinishedIn({ project, documents: documents(sitting), now }, [sitting.hole(HOLE)]);
  return { note: note.join('\n'), letter: open.flatMap(({ items }) => items).join('\n') };
}

/** A planned hole of the sample, begun by one Enter on the list of holes. */
async function begun(): Promise<Sitting> {
  const sitting = await sitDown(sampleFiles());
  sitting.press('f10', 'down', 'enter');
  expect(headerOf(sitting.hole(HOLE)).state).toBe('drilling');
  return sitting;
}

/** The line-up as planned, all the way to its acceptance. */
function lineUp(sitting: Sitting, key = 'ctrl-y'): void {
  sitting.press(key);
  for (const answer of ['read', 'Mick Tarrant', '1', '270', '', '-60', '-60', '', '']) sitting.enter(answer);
}

describe('a planned hole that is begun without a line-up', () => {
  it('says so in the answer, with the key, and shows the cautions of the site', async () => {
    const sitting = await begun();
    const screen = shown(sitting);
    expect(screen).toContain('NOT LINED UP, cautions not read: Ctrl-Y (offsider line-up).');
    expect(screen).toContain('Old pits west of the pads: stay behind the bunting.');
    expect(screen).toContain('MBRC004: drilling with RC7. ;u takes it back.');
  });

  it('shows the hazards of its own ground first', async () => {
    const sitting = await begun();
    sitting.enter(';expect old stope 30-33 void');
    sitting.enter(';expect seam 60 fibre');
    sitting.press('f10', 's');
    sitting.enter('waiting for water');
    expect(headerOf(sitting.hole(HOLE)).state).toBe('suspended');
    sitting.press('enter');
    const screen = shown(sitting);
    expect(screen).toMatch(
      /NOT LINED UP.*VOID expected at 30–33 m: old stope\. FIBRE expected from 60 m: seam\. Old pits west/,
    );
  });

  it('reads them in its line-up first, and goes to the collar only with the driller', async () => {
    const sitting = await begun();
    sitting.enter(';expect old stope 30-33 void');
    sitting.press('ctrl-y');
    const screen = shown(sitting, 80, 30);
    expect(screen).toMatch(/- VOID expected at 30–33 m: old stope\..*Old pits west.*Reading this is not an/);
    for (const answer of ['read', 'Mick Tarrant', '1', '270', '', '-60', '-60']) sitting.enter(answer);
    const right = sitting.screen(80, 24).map((each) => each.slice(34, 79));
    expect(right.join(' ').replace(/\s+/g, ' ')).toContain(
      'The collar is under the mast: go there only when the driller takes you in.',
    );
  });

  it('is named by the check, the note for the next crew and the letter until it is lined up', async () => {
    const sitting = await begun();
    expect(found(sitting)).toMatchObject([{ severity: 'warning', place: { hole: HOLE } }]);
    const { note, letter } = passedOn(sitting);
    for (const text of [note, letter])
      expect(text).toContain('NOT LINED UP, cautions not read: Ctrl-Y, or ;not-lined-up and why.');
    lineUp(sitting);
    expect(said(sitting)).toBe('Line-up accepted: it is station 0 of the hole.');
    expect(found(sitting)).toEqual([]);
    const after = passedOn(sitting);
    for (const text of [after.note, after.letter]) expect(text).not.toMatch(/lined up/i);
  });

  it('is named no more as a point once someone says why, and the reason goes on in the note and the letter', async () => {
    const sitting = await begun();
    sitting.enter(';not-lined-up');
    expect(said(sitting)).toContain('a reason');
    sitting.press('escape');
    sitting.enter(';not-lined-up begun before the laptop came');
    expect(said(sitting)).toBe('not lined up: begun before the laptop came');
    expect(found(sitting)).toEqual([]);
    const { note, letter } = passedOn(sitting);
    for (const text of [note, letter])
      expect(text).toContain('Not lined up, by NOK, because: begun before the laptop came.');
    sitting.press('ctrl-u');
    expect(found(sitting)).toHaveLength(1);
  });

  it('is not said of a hole that was lined up before it began, and no reason is taken for it', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.press('f10', 'down');
    lineUp(sitting, 'l');
    sitting.press('enter');
    expect(said(sitting)).toContain('drilling with RC7');
    expect(shown(sitting)).not.toContain('NOT LINED UP');
    sitting.enter(';not-lined-up no need');
    expect(said(sitting)).toContain('No line-up is missing here.');
    expect(found(sitting)).toEqual([]);
  });
});
