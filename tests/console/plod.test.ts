import { describe, expect, it } from 'vitest';
import { formText } from '../../src/console/lists/plod-form.ts';
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
    expect(text(sitting)).toContain('11:27 h of the shift (05:32–17:40, 12:08 h) are not on any line');
    for (const line of SHEET.slice(2))
      sitting.enter(line.replace('0-30', '0-6').replace(/-(48|96|102)$/, '-7'));
    sitting.press('escape', 'escape');
    typed(
      sitting,
      SHEET.map((line) => line.replace(/ (0-30|-48|-96|-102)$/, '')),
    );
    expect(text(sitting)).toContain('The lines make the shift.');
    sitting.press('enter');
    expect(said(sitting)).toBe('plod 0413 recorded, 9 lines');
    const [first] = shiftThings(shiftOf(sitting), 'plodLines').map(([, line]) => line);
    expect(first).toMatchObject({ activity: 'prestart', minutes: 26, startsAt: '2026-03-13T05:32:00+08:00' });
    expect(shiftThings(shiftOf(sitting), 'plods')[0]?.[1]).toMatchObject({
      sheet: '0413',
      from: 'Mick Tarrant',
    });
    expect(text(sitting)).toMatch(/own record \$ [\d,.]+ · plod \$ [\d,.]+/);
    sitting.press('ctrl-u');
    sitting.type('y');
    expect(shiftThings(shiftOf(sitting), 'plods')).toEqual([]);
    sitting.press('tab', 'tab', 'tab');
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
      '0:40 h of the shift (05:32–17:40, 12:08 h) are not on any line. Type what is missing, or Enter again',
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
    sitting.press('escape', 'escape', 'ctrl-p');
    for (const line of ['0414 =', '1h s', '', '']) sitting.enter(line);
    expect(shiftThings(shiftOf(sitting), 'plods')).toHaveLength(2);
  });
});

describe('a plod typed field by field', () => {
  /** Twelve lines of a usual sheet: the fields of each, what is left out stays empty. */
  const USUAL = [
    ['05:32-06:00', ['0532', '0600', 'p']],
    ['06:00-06:13', ['', '0613', 'l', 'mbrc001']],
    ['06:13-06:58', ['', '0658', 'd', '', '0', '30']],
    ['06:58-07:07', ['', '0707', 'v', '', '', '', '1']],
    ['07:07-09:00', ['', '0900', 'd', '', '', '48']],
    ['09:00-09:30', ['', '0930', 's']],
    ['09:30-12:03', ['', '1203', 'd', '', '', '78']],
    ['12:03-12:32', ['', '1232', 'k']],
    ['12:32-14:00', ['', '1400', 'd', '', '', '96']],
    ['14:00-14:50', ['', '1450', 'b', '', '', '', '', '', '', 'hose']],
    ['14:50-16:00', ['', '1600', 'd', '', '', '102']],
    ['16:00-17:40', ['', '1740', 'm']],
  ] as const;

  /** Types the lines into the form and says how many keys it took, Tab, Enter and F4 among them. */
  function filled(sitting: Sitting): number {
    let keys = 0;
    const press = (key: string) => {
      sitting.press(key);
      keys += 1;
    };
    press('tab');
    for (const [, fields] of USUAL) {
      let at = fields[0] === '' ? 1 : 0;
      for (const [index, text] of fields.entries()) {
        if (text === '') continue;
        // Over more fields than half of them the way back is the shorter one.
        const ahead = index - at;
        for (let step = 0; step < Math.min(ahead, 10 - ahead); step += 1)
          press(ahead <= 5 ? 'enter' : 'shift-tab');
        sitting.type(text);
        keys += text.length;
        at = index;
      }
      press('f4');
    }
    return keys;
  }

  it('has a field for wet metres, which makes the line that is typed', () => {
    const made = (wet: string) =>
      formText(
        { field: 0, values: { to: '0730', activity: 'd', top: '0', foot: '54', wet } },
        { activities: [{ code: 'drilling', label: 'Drilling', charge: 'metres', key: 'd' }] },
      );
    expect(made('y')).toBe('-0730 d 0-54 wet');
    expect(made('48-54')).toBe('-0730 d 0-54 wet48-54');
  });

  it('takes twelve usual lines in under 150 keys, from the sheet’s number to its recording', async () => {
    const sitting = await yesterday();
    sitting.press('ctrl-p');
    sitting.enter('0413');
    const keys = filled(sitting);
    expect(said(sitting)).toBe('');
    sitting.press('escape');
    expect(text(sitting)).toContain('The lines make the shift.');
    sitting.press('enter');
    expect(said(sitting)).toBe('plod 0413 recorded, 12 lines');
    // Ctrl-P, 0413 and Enter before; Escape and Enter behind.
    expect(keys + 6 + 2).toBe(145);
  });

  it('makes the same lines as the line that it is, which Escape leaves to go on with', async () => {
    const [form, line] = [await yesterday(), await yesterday()];
    for (const sitting of [form, line]) {
      sitting.press('ctrl-p');
      sitting.enter('0413');
    }
    filled(form);
    for (const text of [
      '0532-0600 p',
      '-0613 l mbrc001',
      '-0658 d 0-30',
      '-0707 v 1sh',
      '-0900 d -48',
      '-0930 s',
      '-1203 d -78',
      '-1232 k',
      '-1400 d -96',
      '-1450 b: hose',
      '-1600 d -102',
      '-1740 m',
    ])
      line.enter(text);
    const made = (sitting: Sitting) => {
      const { prompt } = sitting.state();
      return prompt?.kind === 'plod' ? prompt.lines.map((each) => each.line) : [];
    };
    expect(made(form)).toHaveLength(12);
    expect(made(form)).toEqual(made(line));
    form.type('1750');
    form.press('tab');
    form.type('lunch at the dam');
    form.press('escape');
    expect(form.state().prompt).toMatchObject({ draft: { text: "-1750 'lunch at the dam'" } });
  });

  it('stays at a field that can not be read, and at the line that can not be, with everything that was typed', async () => {
    const sitting = await yesterday();
    sitting.press('ctrl-p');
    sitting.enter('0413');
    sitting.press('tab');
    for (const [wrong, words] of [
      ['0570', '0570 is not a time of day. Type 0600 or 6:00.'],
      ['0532', ''],
      ['9', '9 is neither a time nor hours. Type 0730, or 1:30h.'],
    ] as const) {
      sitting.press('ctrl-u');
      sitting.type(wrong);
      sitting.press('enter');
      expect(said(sitting)).toBe(words);
    }
    sitting.press('ctrl-u');
    for (const text of ['0558', 'd', 'mbrc001', '30', '30']) {
      sitting.type(text);
      sitting.press('enter');
    }
    sitting.press('down');
    sitting.type('1 tooth');
    sitting.press('f4');
    expect(said(sitting)).toContain('1 tooth is not a number of shots.'.slice(0, 7));
    sitting.press('ctrl-u', 'f4');
    expect(said(sitting)).toContain('Its metres end at or above where they start, 30–30.');
    expect(text(sitting)).toMatch(/metres to +30/);
    expect(text(sitting)).toMatch(/activity +d/);
    sitting.press('tab', 'escape', 'escape');
    expect(sitting.state().prompt).toBeUndefined();
  });

  it('is dropped by two Escapes only, once it has a line', async () => {
    const sitting = await yesterday();
    typed(sitting, ['0532-0558 p', '-0613 l mbrc001']);
    sitting.press('escape');
    expect(said(sitting)).toBe('Esc again drops the 2 lines. Any other key keeps them.');
    sitting.type('-');
    expect(sitting.state().prompt).toMatchObject({ lines: [{}, {}], draft: { text: '-' } });
    sitting.press('escape', 'escape');
    expect(sitting.state().prompt).toBeUndefined();
  });
});

describe('a sheet of a shift that goes on', () => {
  it('has no hours that have not come, unless = says that the sheet has them', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T12:04:00+08:00');
    sitting.press('f8', 'ctrl-p');
    sitting.enter('0414');
    sitting.enter('0532-1200 s');
    sitting.enter('-1800 s');
    expect(said(sitting)).toContain('It ends at 18:00, which has not come: it is 12:04.');
    sitting.type(' =');
    sitting.press('enter');
    expect(sitting.state().prompt).toMatchObject({ lines: [{}, {}] });
  });
});

describe('a line that was taken down wrong', () => {
  it('is put right by its number, the first kept beside it, and a signed sheet is left as it is', async () => {
    const sitting = await yesterday();
    typed(sitting, ['0532-1203 s', '-1232 k', '-1740 s']);
    sitting.press('enter');
    const lines = () => shiftThings(shiftOf(sitting), 'plodLines').map(([, line]) => line);
    sitting.enter('line 2 -1242 k: late');
    expect(said(sitting)).toContain('It overlaps line 2, standby 12:32–17:40, by 0:10 h');
    sitting.type(' =');
    sitting.press('enter');
    expect(said(sitting)).toBe(
      'plod 0413, line 2 corrected: 12:03–12:42  0:39  crib  late; it was 12:03–12:32  0:29  crib',
    );
    expect(lines()[1]).toMatchObject({
      minutes: 39,
      was: ['12:03–12:32  0:29  crib; corrected 18:00 by NOK'],
    });
    expect(text(sitting)).toContain('was 12:03–12:32 0:29 crib; corrected 18:00 by NOK');
    expect(text(sitting).replaceAll(/[│\s]+/g, ' ')).toContain('12:32–12:42, 0:10 h: the sheet has crib');
    sitting.press('ctrl-u');
    expect(lines()[1]).not.toHaveProperty('was');
    sitting.enter('line 9 -1242 k');
    expect(said(sitting)).toContain('The sheet has 3 lines');
    sitting.press('escape');
    sitting.enter('sign 0413');
    sitting.enter('line 2 -1232 s');
    expect(said(sitting)).toContain('It is signed. Agree a new sheet');
  });
});

describe('the query list in the console', () => {
  it('points at a difference by the clock; each is agreed, corrected or left open; the signature names what is open', async () => {
    const sitting = await yesterday();
    typed(sitting, ['0532-1740 s']);
    sitting.press('enter');
    expect(text(sitting)).toContain('own record $');
    sitting.enter('agree 05:32 he was there');
    expect(said(sitting)).toMatch(
      /^query 05:32 agreed: 05:32–05:58, 0:26 h: the sheet has standby \(line 1\), standby hourly/,
    );
    sitting.enter('correct 99');
    expect(said(sitting)).toMatch(/There is no such query. Give its name/);
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
    ).toMatch(
      /0413 signed by NOK 2026-03-14 18:00 at [\d,.]+ by the record and [\d,.]+ by the plod; now it is .*Changed since: hours/,
    );
  });
});

describe('Ctrl-U on an empty line', () => {
  it('asks before a sheet of many lines goes, or what was recorded more than 20 minutes ago; y does it, any other key leaves it', async () => {
    const sitting = await yesterday();
    sitting.enter('split 12:10');
    sitting.press('ctrl-u');
    expect(said(sitting)).toMatch(/^Undone: .*split at 12:10/);
    typed(sitting, ['0532-1740 s']);
    sitting.press('enter', 'ctrl-u');
    expect(text(sitting).replaceAll(/[│\s]+/g, ' ')).toContain(
      'This would be taken back: shift RC7_2026-03-13_DAY: plod 0413 recorded, one line, recorded at 18:00.',
    );
    sitting.press('ctrl-u');
    expect(said(sitting)).toBe('Nothing is undone.');
    expect(shiftThings(shiftOf(sitting), 'plods')).toHaveLength(1);
    sitting.press('ctrl-u');
    sitting.type('y');
    expect(shiftThings(shiftOf(sitting), 'plods')).toEqual([]);
    sitting.enter('split 12:10');
    sitting.wait(21);
    sitting.press('ctrl-u', 'enter');
    expect(said(sitting)).toBe('Nothing is undone.');
    sitting.press('ctrl-u');
    sitting.type('y');
    expect(said(sitting)).toMatch(/^Undone: .*split at 12:10/);
  });
});
