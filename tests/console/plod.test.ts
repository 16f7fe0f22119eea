import { describe, expect, it } from 'vitest';
import { shiftThings } from '../../src/shift/shift.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const ID = 'RC7_2026-03-13_DAY';
const shiftOf = (sitting: Sitting) => {
  const shift = sitting.state().documents.get(`shift/${ID}`);
  if (shift === undefined) throw new Error('no shift');
  return shift;
};
const said = (sitting: Sitting): string => sitting.state().message?.text ?? '';
const text = (sitting: Sitting): string => sitting.screen(100, 60).join('\n');

/** The console on the shift of the day before, whose plod is on the table. */
async function yesterday(): Promise<Sitting> {
  const sitting = await sitDown(sampleFiles(), '2026-03-14T18:00:00+08:00');
  sitting.press('f8', 'left');
  return sitting;
}

const SHEET = [
  '0532-0558 p',
  '-0613 l mbrc002',
  '-0658 d 0-30',
  '-0707 v 1sh',
  '-0750 d -48',
  '-1203 d -96',
  '-1232 k',
  '-1450 d -102',
  '-1740 m',
];

function typed(sitting: Sitting, lines: readonly string[] = SHEET): void {
  sitting.press('ctrl-p');
  sitting.type('0413 Mick Tarrant');
  sitting.press('enter');
  for (const line of lines) sitting.enter(line);
}

describe('a plod typed in the console', () => {
  it('is recorded with its times by an empty line, and undone by Ctrl-U', async () => {
    const sitting = await yesterday();
    typed(sitting, SHEET.slice(0, 2));
    expect(text(sitting)).toContain('11:27 h of the shift (05:32–17:40, 12:08 h) are on no line');
    for (const line of SHEET.slice(2))
      sitting.enter(line.replace('0-30', '0-6').replace(/-(48|96|102)$/, '-7'));
    sitting.press('escape');
    typed(
      sitting,
      SHEET.map((line) => line.replace(/ (0-30|-48|-96|-102)$/, '')),
    );
    expect(text(sitting)).toContain('The lines make the shift.');
    sitting.press('enter');
    expect(said(sitting)).toBe('plod 0413 taken down, 9 lines');
    const [first] = shiftThings(shiftOf(sitting), 'plodLines').map(([, line]) => line);
    expect(first).toMatchObject({ activity: 'prestart', minutes: 26, startsAt: '2026-03-13T05:32:00+08:00' });
    expect(shiftThings(shiftOf(sitting), 'plods')[0]?.[1]).toMatchObject({
      sheet: '0413',
      from: 'Mick Tarrant',
    });
    expect(text(sitting)).toMatch(/own record \$ [\d,.]+ · plod \$ [\d,.]+/);
    sitting.press('ctrl-u');
    expect(shiftThings(shiftOf(sitting), 'plods')).toEqual([]);
    sitting.press('tab', 'tab');
    expect(text(sitting)).toContain('shift record RC7_2026-03-13_DAY');
  });

  it('has the crew and a remark as the sheet names them, on lines of their own', async () => {
    const sitting = await yesterday();
    typed(sitting, ['crew Mick Tarrant, Dee Raun', 'remark late start', 'crew', '0532-1740 s']);
    expect(sitting.state().prompt).toMatchObject({ draft: { text: 'crew0532-1740 s' } });
    for (let key = 0; key < 'crew0532-1740 s'.length; key += 1) sitting.press('backspace');
    sitting.enter('0532-1740 s');
    expect(text(sitting)).toContain('crew Mick Tarrant, Dee Raun · late start');
    sitting.press('enter');
    expect(shiftThings(shiftOf(sitting), 'plods')[0]?.[1]).toMatchObject({
      crew: ['Mick Tarrant', 'Dee Raun'],
      remark: 'late start',
    });
    expect(text(sitting)).toContain('crew Mick Tarrant, Dee Raun');
  });

  it('keeps a line that can not be, with what is wrong, and takes the last one back by Up', async () => {
    const sitting = await yesterday();
    typed(sitting, ['0532-0558 p', '0550-0613 l']);
    expect(said(sitting)).toContain('It overlaps line 1, prestart 05:32–05:58, by 0:08 h.');
    expect(sitting.state().prompt).toMatchObject({
      lines: [{ text: '0532-0558 p' }],
      draft: { text: '0550-0613 l' },
    });
    for (let key = 0; key < 11; key += 1) sitting.press('backspace');
    sitting.press('up');
    expect(sitting.state().prompt).toMatchObject({ lines: [], draft: { text: '0532-0558 p' } });
  });

  it('that leaves a gap says so before it is recorded', async () => {
    const sitting = await yesterday();
    typed(sitting, ['0532-1700 s']);
    sitting.press('enter');
    expect(said(sitting)).toContain(
      '0:40 h of the shift (05:32–17:40, 12:08 h) are on no line. Type what is missing, or Enter again',
    );
    expect(shiftThings(shiftOf(sitting), 'plods')).toEqual([]);
    sitting.press('enter');
    expect(shiftThings(shiftOf(sitting), 'plods')).toHaveLength(1);
  });

  it('is refused for a shift that has another, unless = says that it is a second one', async () => {
    const sitting = await yesterday();
    typed(sitting, ['0532-1740 s']);
    sitting.press('enter', 'ctrl-p');
    for (const line of ['0414', '1h s', '']) sitting.enter(line);
    sitting.press('enter');
    expect(said(sitting)).toContain('Sheet 0413 is recorded for it already.');
    expect(sitting.state().prompt).toMatchObject({ kind: 'plod', lines: [{ text: '1h s' }] });
    sitting.press('escape', 'ctrl-p');
    for (const line of ['0414 =', '1h s', '', '']) sitting.enter(line);
    expect(shiftThings(shiftOf(sitting), 'plods')).toHaveLength(2);
  });
});

describe('the query list in the console', () => {
  it('points at a difference by the clock; each is agreed, corrected or left open; the signature names what is open', async () => {
    const sitting = await yesterday();
    typed(sitting, ['0532-1740 s']);
    sitting.press('enter');
    expect(text(sitting)).toContain('own record $');
    sitting.enter('agree 1 he was there');
    expect(said(sitting)).toMatch(
      /^query 1 agreed: 05:32–05:58, 0:26 h: the sheet has standby \(line 1\), standby hourly/,
    );
    sitting.enter('correct 99');
    expect(said(sitting)).toMatch(/There is no such query. Give its number, 1 to \d+\./);
    sitting.press('escape');
    sitting.enter('sign 0413');
    const [, signed] = shiftThings(shiftOf(sitting), 'signOffs')[0] ?? [];
    expect(signed).toMatchObject({ by: 'NOK', ownCents: expect.any(Number), plodCents: expect.any(Number) });
    expect(signed?.exceptions).toHaveLength(signed?.openQueries ?? -1);
    expect(signed?.exceptions?.some((each) => each.startsWith('05:32–05:58'))).toBe(false);
    sitting.enter('withdraw 0413');
    expect(said(sitting)).toContain('It is signed.');
    sitting.press('escape');
    sitting.enter('05:58 standby');
    sitting.enter('06:13 standby');
    expect(text(sitting)).toContain('NOK');
    expect(
      sitting
        .screen(100, 90)
        .join(' ')
        .replaceAll(/[│\s]+/g, ' '),
    ).toMatch(/signed 2026-03-14 18:00 at [\d,.]+ by the record and [\d,.]+ by the plod; now it is/);
  });
});
