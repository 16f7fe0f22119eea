import { describe, expect, it } from 'vitest';
import { holeNouns } from '../../../src/hole/hole.ts';
import { type Sitting, sampleFiles, sitDown } from '../support/sitting.ts';

const AT = '2026-03-14T09:08:00+08:00';
/** The right-hand panels of the log screen as one text: what a panel wraps reads on. */
const panel = (sitting: Sitting, columns = 80, rows = 24): string =>
  sitting
    .screen(columns, rows)
    .map((each) => each.slice(columns < 100 ? 49 : 59, columns - 1).trim())
    .join(' ')
    .replaceAll(/ +/g, ' ');

describe('the advice beside the log', () => {
  it('stands first in its panel, and says what it costs to be sure', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    const text = panel(sitting, 100, 30);
    expect(text.indexOf('ASK')).toBeLessThan(text.indexOf('drilled 54 of 120 m planned'));
    expect(text).toContain('a void in the last 6 m can’t be ruled out: log 8 m more');
  });

  it('shows a void that could come whole at 80 by 24, first, as a danger and never as a thing done', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter(';expect old stope 62-66 void');
    const text = panel(sitting);
    expect(text).toContain(
      '! ASK: void: old stope could come at 62 m, 8 m below the bit: call, go by the site procedure.',
    );
    expect(text).not.toContain('√ void');
    sitting.press('f5');
    const screen = sitting.screen(80, 24);
    expect(screen.findIndex((each) => each.includes('! ASK: void'))).toBeLessThan(4);
    expect(screen.find((each) => /[!√?–] [a-z]+( [a-z]+)*:/.test(each))).toContain('! void:');
  });

  it('says of a rule that holds the hole that it does so until it is met', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.press('f5');
    expect(sitting.screen(100, 60).join('\n')).toContain('Holds the hole until met.');
  });

  it('waits for what was settled by a decision to go on', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter(';extend called Ines Falk: to 132, zone open');
    expect(panel(sitting)).toContain('NOT YET: goes on to 132 m, decided by NOK at 54 m');
    expect(holeNouns(sitting.hole('MBRC003'), 'decisions').at(-1)).toMatchObject({
      toMm: 132_000,
      reason: 'to 132, zone open',
    });
    sitting.enter(';extend 6 m more');
    expect(holeNouns(sitting.hole('MBRC003'), 'decisions').at(-1)).toMatchObject({ toMm: 60_000 });
    sitting.enter(';extend to 50');
    expect(sitting.state().message?.text).toContain('at 54 m already');
    expect(holeNouns(sitting.hole('MBRC003'), 'decisions')).toHaveLength(2);
  });

  it('asks about stopping short when the hole is ended, though no rule ends it', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    expect(panel(sitting, 100, 30)).not.toContain('short of the planned');
    sitting.press('f12', 'enter', 'enter');
    sitting.enter('c');
    expect(sitting.screen(100, 30).join('\n')).toContain('66 m short of the planned 120 m');
    sitting.enter('called Ines Falk: bit stuck');
    expect(holeNouns(sitting.hole('MBRC003'), 'decisions').at(-1)).toMatchObject({
      kind: 'ended early',
      verdict: 'ask',
      called: 'Ines Falk',
    });
  });
});
