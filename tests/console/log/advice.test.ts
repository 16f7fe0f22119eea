import { describe, expect, it } from 'vitest';
import { holeNouns } from '../../../src/hole/hole.ts';
import { type Files, type Sitting, sampleFiles, sitDown } from '../support/sitting.ts';

const AT = '2026-03-14T09:08:00+08:00';
/** The right-hand panels of the log screen as one text: what a panel wraps reads on. */
const panel = (sitting: Sitting, columns = 80, rows = 24): string =>
  sitting
    .screen(columns, rows)
    .map((each) => each.slice(columns < 100 ? 49 : 59, columns - 1).trim())
    .join(' ')
    .replaceAll(/ +/g, ' ');

describe('the advice beside the log', () => {
  it('comes first in its panel, and says what it costs to be sure', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    const text = panel(sitting, 100, 30);
    expect(text.indexOf('ASK')).toBeLessThan(text.indexOf('drilled 54 of 120 m planned'));
    expect(text).toContain('not all of the last 6 m seen: log 8 m more');
  });

  it('shows a void that could come whole at 80 by 24, first, as a danger and never as a thing done', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter(';expect old stope 62-66 void');
    const text = panel(sitting);
    expect(text).toContain(
      '! ASK: void: old stope could come at 62 m, 8 m below the bit or less: call Ines Falk, channel 4, go by the site procedure.',
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

  it('says to which depth a decision to go on holds where none is typed', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter(';extend called Ines Falk: zone open');
    expect(sitting.state().message?.text).toContain('extended at 54 m, to the end of the rod at 60 m');
    expect(panel(sitting)).toContain('goes on to 60 m');
  });

  it('counts the metres that a cleared range leaves out, in the title, in the list of holes and on the panel', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter(';clear 30-32');
    sitting.press('enter');
    const text = panel(sitting, 100, 30);
    expect(text).toContain('log 46 m, gaps 2 m');
    expect(text).toContain('10 m not logged, 2 m of them in gaps');
    sitting.press('f10');
    expect(sitting.screen(100, 30).find((each) => each.includes('MBRC003'))).toMatch(/54 m +44 m/);
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

  it('holds the hole where the project has no rule about a hold, to the end of it', async () => {
    const sitting = await sitDown(
      withRules((rules) => rules.filter(({ name }) => name !== 'hold')),
      AT,
    );
    sitting.enter(';hold called Ines Falk: wants to see the chips');
    expect(panel(sitting, 100, 40)).toContain(
      'ASK: on hold: held by NOK since 54 m, Ines Falk called: wants to see the chips',
    );
    sitting.press('f12', 'enter');
    expect(sitting.screen(100, 40).join(' ')).toContain('On hold by NOK since 54 m: wants to see the');
  });

  it('asks about a stope that was drilled through unseen, with its metres and whom to call', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter(';expect old stope 47-50 void');
    expect(panel(sitting)).toContain('old stope was expected at 47–50.1 m, and 46–50.1 not seen');
    expect(panel(sitting)).toContain('not all of the last 6 m seen: log 8 m more');
  });

  it('shows every danger with its call whole at 80 by 24, what was seen first, also while the driller has stopped', async () => {
    const fibre = {
      name: 'fibre',
      words: 'Fibre in the chips.',
      verdict: 'ask',
      safety: true,
      call: 'Ines Falk',
      when: {
        seen: { where: { field: 'rock', isOneOf: ['BAS', 'GRN', 'DOL', 'SCH', 'CHT', 'FCT'] }, forM: 1 },
      },
    };
    const sitting = await sitDown(
      withRules((rules) => [...rules, fibre]),
      AT,
    );
    sitting.enter(';expect old stope 62-66 void');
    const dangers = (): void => {
      expect(panel(sitting)).toMatch(
        /! (ASK: )?void: old stope could come at 62 m, 8 m below the bit or less: call Ines Falk, channel 4, go by the site procedure\./,
      );
      expect(panel(sitting)).toMatch(
        /! fibre: rock .+ at \d+–\d+, \d+ m above the bit: call Ines Falk, go by the site procedure\./,
      );
    };
    dangers();
    sitting.enter(';stop rods bogging');
    dangers();
    expect(panel(sitting)).not.toContain('ASK');
  });
});

type AnyRule = { readonly name: string };

/** The sample project with other rules on ending a hole. */
function withRules(change: (rules: readonly AnyRule[]) => readonly AnyRule[]): Files {
  const files = sampleFiles();
  const settings = JSON.parse(files['project.json']!);
  settings.termination.rules = change(settings.termination.rules);
  return { ...files, 'project.json': JSON.stringify(settings) };
}
