import { describe, expect, it } from 'vitest';
import { holeNouns } from '../../src/hole/hole.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const HOLE = 'MBRC003';
const said = (sitting: Sitting) => sitting.state().message?.text ?? '';
const decisions = (sitting: Sitting) => holeNouns(sitting.hole(HOLE), 'decisions');
const advice = (sitting: Sitting): string => {
  sitting.press('f5');
  const shown = sitting
    .screen(100, 44)
    .join(' ')
    .replaceAll(/[│\s]+/g, ' ');
  sitting.press('escape');
  return shown;
};

/** The sample hole, its log some metres behind the rig: the void rule can't tell, and asks. */
const inDoubt = () => sitDown(sampleFiles());

describe('a call about going on', () => {
  it('settles the only rule that asks, and the answer and F5 name it', async () => {
    const sitting = await inDoubt();
    expect(advice(sitting)).toContain('ASK: void: can’t tell');
    sitting.enter(';extend called Ines Falk: to 66, the mine plan shows none');
    expect(said(sitting)).toContain('; settles void');
    expect(decisions(sitting).at(-1)).toMatchObject({ called: 'Ines Falk', settles: ['void'] });
    const shown = advice(sitting);
    expect(shown).not.toContain('ASK');
    expect(shown).toContain('settled by NOK at 54 m, Ines Falk called');
  });

  it('is asked which where several rules ask and it names none: a call about a hold says nothing of a void', async () => {
    const sitting = await inDoubt();
    sitting.enter(';hold deep lode');
    const before = decisions(sitting).length;
    sitting.enter(';extend called Ines Falk: to 66, footwall wanted');
    expect(said(sitting)).toBe(
      'Was the call about hold or void? Name it: ;extend called Ines Falk: to 66, footwall wanted, void. If it settled none of them, add = at the end.',
    );
    expect(decisions(sitting)).toHaveLength(before);
    expect(sitting.state().draft.text).toBe(';extend called Ines Falk: to 66, footwall wanted');
    sitting.press('escape');
    sitting.enter(';extend called Ines Falk: to 66, footwall wanted, hold');
    expect(said(sitting)).toContain('this ends the hold');
    expect(said(sitting)).toContain('void still asks: the call was not about it');
    expect(said(sitting)).not.toContain('settles');
    expect(advice(sitting)).toContain('void: can’t tell');
  });

  it('settles none of several where the line insists, and void once a later call names it', async () => {
    const sitting = await inDoubt();
    sitting.enter(';hold deep lode');
    sitting.enter(';extend called Ines Falk: to 66, footwall wanted =');
    expect(decisions(sitting).at(-1)).toMatchObject({ settles: [], toMm: 66_000 });
    expect(advice(sitting)).toContain('ASK: void: can’t tell');
    sitting.enter(';extend called Ines Falk: to 66, Void: nothing on the mine plan');
    expect(said(sitting)).toContain('; settles void');
    expect(advice(sitting)).not.toContain('ASK');
  });

  it('names a rule only by its whole name', async () => {
    const sitting = await inDoubt();
    sitting.enter(';hold deep lode');
    sitting.enter(';extend called Ines Falk: to 66, avoids the fault, upheld');
    expect(said(sitting)).toContain('Was the call about hold or void?');
  });

  it.each([
    ['NOK', 'NOK is you: it takes someone else'],
    ['nobody', '“nobody” names no one'],
    ['x', '“x” names no one'],
  ])('was not made to %s', async (name, problem) => {
    const sitting = await inDoubt();
    sitting.enter(`;extend called ${name}: to 66`);
    expect(said(sitting)).toContain(problem);
    expect(decisions(sitting)).toEqual([]);
  });
});
