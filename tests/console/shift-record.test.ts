import { describe, expect, it } from 'vitest';
import { shiftHeaderOf, shiftThings } from '../../src/shift/shift.ts';
import { emptySample, type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const ID = 'RC7_2026-03-14_DAY';
const shiftOf = (sitting: Sitting, id = ID) => {
  const shift = sitting.state().documents.get(`shift/${id}`);
  if (shift === undefined) throw new Error(`no shift ${id}`);
  return shift;
};
const entries = (sitting: Sitting, id = ID) =>
  shiftThings(shiftOf(sitting, id), 'activities')
    .map(([, { startedAt, activity, hole: _, charge: __, ...more }]) => ({
      at: startedAt.slice(11, 16),
      activity,
      ...more,
    }))
    .toSorted((a, b) => (a.at < b.at ? -1 : 1));
const text = (sitting: Sitting): string => sitting.screen().join('\n');
const said = (sitting: Sitting): string => sitting.state().message?.text ?? '';

describe('the switcher of activities', () => {
  it('takes two keys: Ctrl-A and the key of the activity, from the log, a list, the form and the list of holes', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T09:30:00+08:00');
    for (const [screen, key, activity] of [
      [[], 's', 'standby'],
      [['f5'], 'b', 'breakdown'],
      [['escape', 'f4'], 'd', 'drilling'],
      [['f10'], 'v', 'survey'],
    ] as const) {
      sitting.press(...screen);
      sitting.press('ctrl-a');
      sitting.type(key);
      sitting.wait(5);
      expect(entries(sitting).at(-1)?.activity).toBe(activity);
    }
    expect(sitting.state().prompt).toBeUndefined();
  });

  it('stays and says so where a key picks nothing', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T09:30:00+08:00');
    const before = entries(sitting).length;
    sitting.press('ctrl-a');
    sitting.type('z');
    expect(said(sitting)).toBe('No activity has the key z.');
    sitting.type('k');
    expect(entries(sitting)).toHaveLength(before + 1);
  });

  it('begins a shift at its hour in the settings, so that the time before the first entry is a gap', async () => {
    const sitting = await sitDown(emptySample(), '2026-03-16T06:40:00+08:00');
    sitting.press('ctrl-a');
    sitting.type('p');
    sitting.press('f8');
    expect(said(sitting)).toBe('');
    expect(text(sitting)).toContain('from 05:30 to now; it ends 18:00 by its settings');
    expect(text(sitting)).toMatch(/05:30 +1:10 +GAP: nothing recorded/);
  });
});

describe('who authorised standby', () => {
  it.each([
    ['x', '“x” names no one'],
    ['nobody', '“nobody” names no one'],
    ['Mick', 'Mick is a driller, one of the drilling crew'],
  ])('is not %s: the line is refused, and kept', async (name, problem) => {
    const sitting = await sitDown(emptySample(), '2026-03-16T06:40:00+08:00');
    sitting.press('f8');
    sitting.enter(`standby by ${name}: no water`);
    expect(text(sitting)).toContain(problem);
    expect(sitting.state().documents.has('shift/RC7_2026-03-16_DAY')).toBe(false);
  });
});

describe('what is told late', () => {
  const at = async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T15:00:00+08:00');
    return sitting;
  };

  it('is one line behind ;activity, and what went on before goes on after an end that is given', async () => {
    const sitting = await at();
    sitting.enter(';activity breakdown 14:20 hydraulic hose');
    expect(entries(sitting).at(-1)).toEqual({ at: '14:20', activity: 'breakdown', remark: 'hydraulic hose' });
    sitting.enter(';activity standby 13:00-13:30 by Ines Falk: no water');
    expect(entries(sitting).slice(-3)).toEqual([
      { at: '13:00', activity: 'standby', authorisedBy: 'Ines Falk', remark: 'no water' },
      { at: '13:30', activity: 'drilling' },
      { at: '14:20', activity: 'breakdown', remark: 'hydraulic hose' },
    ]);
  });

  it('is amended, back-timed, authorised, split and taken out by a line on the record, each undone by Ctrl-U with the original kept', async () => {
    const sitting = await at();
    sitting.enter(';activity standby 14:20');
    sitting.press('f8');
    const before = entries(sitting);
    for (const [line, after] of [
      ['14:20 by Ines Falk', { at: '14:20', activity: 'standby', authorisedBy: 'Ines Falk' }],
      ['14:20 14:10', { at: '14:10', activity: 'standby' }],
      ['14:20 breakdown: hose', { at: '14:20', activity: 'breakdown', remark: 'hose' }],
      ['split 14:40', { at: '14:40', activity: 'standby' }],
      ['remove 14:20', before.at(-2)],
    ] as const) {
      sitting.enter(line);
      expect(entries(sitting).at(-1)).toEqual(after);
      sitting.press('ctrl-u');
      expect(entries(sitting)).toEqual(before);
    }
    const history = shiftOf(sitting).history.map((entry) => entry.what);
    expect(history.filter((what) => what.startsWith('amended'))).toHaveLength(3);
  });

  it('is amended by Enter on the entry, which opens it as a line', async () => {
    const sitting = await at();
    sitting.press('f8', ...Array.from({ length: 20 }, () => 'up'), 'down', 'enter');
    expect(sitting.state().prompt).toMatchObject({
      kind: 'shift line',
      draft: { text: '06:05 line-up 06:05 MBRC003' },
    });
    sitting.type(': pegs moved');
    sitting.press('enter');
    expect(entries(sitting)[1]).toEqual({ at: '06:05', activity: 'line-up', remark: 'pegs moved' });
  });

  it('opens at the activity going on; of a shift that is over at the first gap, or standby that no one authorised', async () => {
    const sitting = await at();
    sitting.press('f8', 'enter');
    expect(sitting.state().prompt).toMatchObject({
      draft: { text: expect.stringMatching(/^08:33 drilling/) },
    });
    sitting.press('escape', 'left', 'escape');
    sitting.enter(';activity end 14:50');
    sitting.press('f8', 'enter');
    expect(sitting.state().prompt).toMatchObject({
      draft: { text: expect.stringMatching(/^08:33 drilling/) },
    });
    sitting.press('escape');
    sitting.enter('13:00 standby');
    sitting.press('escape');
    sitting.enter('standby 13:00-13:30');
    sitting.press('escape', 'f8', 'enter');
    expect(sitting.state().prompt).toMatchObject({ draft: { text: '13:00 standby 13:00 MBRC003' } });
  });

  it('loses the hole, the authoriser, the remark by a word, or by taking them off the entry that Enter opened', async () => {
    const sitting = await at();
    sitting.enter(';activity standby 13:00-13:30 by Ines Falk: no water');
    sitting.press('f8');
    sitting.enter('13:00 -by -hole');
    expect(entries(sitting).at(-2)).toEqual({ at: '13:00', activity: 'standby', remark: 'no water' });
    sitting.press('ctrl-u', 'up', 'enter');
    expect(sitting.state().prompt).toMatchObject({
      draft: { text: '13:00 standby 13:00 MBRC003 by Ines Falk: no water' },
    });
    for (let key = 0; key < ' by Ines Falk: no water'.length; key += 1) sitting.press('backspace');
    sitting.press('enter');
    expect(entries(sitting).at(-2)).toEqual({ at: '13:00', activity: 'standby' });
    sitting.enter('13:00 -by');
    expect(entries(sitting).at(-2)).toEqual({ at: '13:00', activity: 'standby' });
  });

  it('is told in the order in which it happened: what follows a late entry takes the place of what went on again', async () => {
    const sitting = await at();
    sitting.press('f8');
    sitting.enter('breakdown 12:00-12:40 hose');
    sitting.enter('standby 12:40-13:00 by Ines Falk: no water');
    expect(said(sitting)).toBe('Standby 12:40–13:00 on MBRC003, then drilling again');
    sitting.enter('crib 13:00');
    expect(said(sitting)).toBe('Crib from 13:00 on MBRC003, in place of drilling going on again');
    expect(entries(sitting).slice(-4)).toEqual([
      { at: '08:33', activity: 'drilling' },
      { at: '12:00', activity: 'breakdown', remark: 'hose' },
      { at: '12:40', activity: 'standby', authorisedBy: 'Ines Falk', remark: 'no water' },
      { at: '13:00', activity: 'crib' },
    ]);
    sitting.enter('drilling 12:40');
    expect(said(sitting)).toContain('Standby starts at 12:40 already');
  });

  it('names every geologist who recorded in it, not only the one who began it', async () => {
    const sitting = await at();
    sitting.enter(';activity crib 14:00-14:20');
    const second = await sitting.reopen('IFA');
    second.enter(';activity breakdown 14:30 hose');
    second.press('f8', ...Array.from({ length: 40 }, () => 'up'));
    expect(text(second)).toContain('geologist NOK, IFA');
  });

  it('of a bit or of water is taken out again at its time', async () => {
    const sitting = await at();
    for (const line of ['bit 14:10 114.3', 'water 14:20 52', 'remove bit 14:10', 'remove water 14:20'])
      sitting.enter(`;activity ${line}`);
    expect(shiftThings(shiftOf(sitting), 'bits')).toEqual([]);
    expect(shiftThings(shiftOf(sitting), 'waterStrikes')).toEqual([]);
    sitting.enter(';activity remove bit 14:10');
    expect(said(sitting)).toContain('No bit is recorded at 14:10. None is recorded in this shift.');
  });

  it('has every form on the smallest screen, and says what those do that begin as what is typed', async () => {
    const sitting = await at();
    sitting.resize(80, 24);
    sitting.press('f8');
    sitting.type('?');
    for (const form of [
      'breakdown 14:20 hydraulic hose',
      'overtime 19:30',
      'withdraw 0412',
      'acknowledge',
      'k crib',
    ])
      expect(text(sitting).replaceAll(/[│\s]+/g, ' ')).toContain(form);
    sitting.press('backspace');
    sitting.type('o');
    expect(text(sitting)).toMatch(/overtime 19:30 +this shift goes on until then/);
    expect(text(sitting)).toContain('open 15:05 ask Dee  the query called 15:05 stays open');
    expect(text(sitting)).not.toContain('withdraw');
  });

  it('names a hole that is none, and water below the rod in hand, and records neither', async () => {
    const sitting = await at();
    const before = entries(sitting).length;
    sitting.enter(';activity drilling ZZ99');
    expect(said(sitting)).toContain('ZZ99 is no hole of this project');
    sitting.press('ctrl-u');
    sitting.enter(';activity water 500');
    expect(said(sitting)).toContain('500 m is deeper than MBRC003');
    sitting.press('ctrl-u');
    expect(entries(sitting)).toHaveLength(before);
    sitting.enter(';activity standby 14:50: ZZ99 is on the next pad');
    expect(entries(sitting).at(-1)).toMatchObject({ activity: 'standby', remark: 'ZZ99 is on the next pad' });
  });

  it('holds crew, consumables, bits and water', async () => {
    const sitting = await at();
    for (const line of [
      'crew Bo Hale, Cy Tan',
      'used 1 hammer bit',
      'used 2 hammer bit',
      'bit 139.7 new face',
      'water 52 strong',
    ])
      sitting.enter(`;activity ${line}`);
    const shift = shiftOf(sitting);
    expect(shiftHeaderOf(shift).crew).toEqual(['Bo Hale', 'Cy Tan']);
    expect(entries(sitting).at(-1)).toMatchObject({ used: [{ item: 'hammer bit', count: 3 }] });
    expect(shiftThings(shift, 'bits')[0]?.[1]).toMatchObject({ gaugeTenthsMm: 1397, remark: 'new face' });
    expect(shiftThings(shift, 'waterStrikes')[0]?.[1]).toMatchObject({ depthMm: 52_000, hole: 'MBRC003' });
    sitting.press('f8');
    expect(sitting.screen(100, 60).join('\n')).toContain('crew Bo Hale, Cy Tan');
  });

  it.each([
    [
      'standby 16:30',
      '16:30 has not come: it is 15:00. Give a time that has passed; for an earlier shift go to it first',
    ],
    ['standby 05:00', 'No shift has begun that this could be recorded in.'],
    [
      'standby 06:05',
      'Line-up starts at 06:05 already. Amend that entry (06:05 and what it was) or take it out (remove 06:05).',
    ],
    ['standby 06:00-06:10', 'Line-up starts at 06:05 already.'],
    ['standby 14:20-14:10', 'has not come'],
    ['lunch 12:00', 'Lunch is not an activity. Use drilling, survey,'],
    ['08:33 08:00', '08:00 is not after survey at 08:24'],
    ['standby 15:30 =', '15:30 has not come'],
    ['remove 05:00', 'No entry starts at 05:00. Entries start at 05:32, 06:05'],
    ['end 08:00', '08:00 is before 08:33, when the last entry started.'],
    ['begin 07:00', '07:00 is after prestart started at 05:32.'],
  ])('is refused with the way out, and nothing is changed: %s', async (line, problem) => {
    const sitting = await at();
    const before = shiftOf(sitting);
    sitting.enter(`;activity ${line}`);
    expect(said(sitting)).toContain(problem);
    expect(shiftOf(sitting)).toBe(before);
  });
});

describe('the hours of a shift', () => {
  it('end by a key, the hour of the settings offered once it has come', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T18:20:00+08:00');
    sitting.press('f8');
    expect(text(sitting)).toContain('End not recorded: 18:00 is presumed. Type end 18:00.');
    sitting.press('ctrl-x', 'enter');
    expect(shiftHeaderOf(shiftOf(sitting)).endedAt).toBe('2026-03-14T18:00:00+08:00');
    expect(text(sitting)).not.toContain('PRESUMED');
    sitting.enter('end 17:45');
    expect(shiftHeaderOf(shiftOf(sitting)).endedAt).toContain('T17:45');
  });

  it('begin by a key, also before any hole is opened', async () => {
    const sitting = await sitDown(emptySample(), '2026-03-16T05:50:00+08:00');
    sitting.press('f8', 'ctrl-b', 'enter');
    expect(shiftHeaderOf(shiftOf(sitting, 'RC7_2026-03-16_DAY')).startsAt).toBe('2026-03-16T05:30:00+08:00');
    sitting.enter('begin 05:40');
    expect(shiftHeaderOf(shiftOf(sitting, 'RC7_2026-03-16_DAY')).startsAt).toContain('T05:40');
  });

  it('go on past their planned end by overtime, to which rods and activities belong and after which it is presumed', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T17:30:00+08:00');
    sitting.enter(';activity overtime 19:30');
    expect(said(sitting)).toBe('shift goes on until 19:30');
    sitting.press('f8');
    expect(text(sitting)).toContain('05:32–now, ends 19:30');
    sitting.wait(60);
    sitting.press('ctrl-a');
    sitting.type('s');
    expect(entries(sitting).at(-1)).toMatchObject({ at: '18:30', activity: 'standby' });
    sitting.wait(90);
    expect(text(sitting)).toContain('19:30 PRESUMED');
    sitting.enter('end 19:20');
    sitting.press('enter');
    expect(shiftHeaderOf(shiftOf(sitting)).endedAt).toContain('T19:20');
    sitting.enter('overtime 20:30');
    expect(said(sitting)).toContain('The shift ended at 19:20. Amend the end instead: end 20:30.');
  });

  it('of a time that has not come are not slipped into yesterday’s shift: refused where its plod is in, else the shift is named', async () => {
    const withPlod = await sitDown(sampleFiles(), '2026-03-13T05:40:00+08:00');
    withPlod.press('f8');
    withPlod.enter('standby 17:30');
    expect(said(withPlod)).toContain('17:30 was in this shift, which has its plod; it is 05:40');
    const without = await sitDown(sampleFiles(), '2026-03-14T05:40:00+08:00');
    without.press('f8');
    without.enter('standby 17:30');
    expect(said(without)).toBe('Standby from 17:30, no hole, in RC7_2026-03-13_DAY');
  });

  it('are looked at and amended in an earlier shift by Left', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T09:30:00+08:00');
    sitting.press('f8', 'left');
    expect(text(sitting)).toContain('shift record RC7_2026-03-13_DAY');
    sitting.enter('end 17:30');
    expect(shiftHeaderOf(shiftOf(sitting, 'RC7_2026-03-13_DAY')).endedAt).toContain('2026-03-13T17:30');
    sitting.press('left', 'left');
    expect(said(sitting)).toBe('That is the first shift.');
  });
});

describe('the hole of an activity', () => {
  /** The hole of the demo ended at 10:00, the next one begun at 11:00 with one rod done, all by the console. */
  const secondHole = async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T10:00:00+08:00');
    sitting.press('f10', 'a');
    sitting.type('rods stuck');
    sitting.press('enter');
    sitting.type('y');
    sitting.wait(60);
    sitting.press('down', 'enter');
    return sitting;
  };
  const holes = (sitting: Sitting) =>
    shiftThings(shiftOf(sitting), 'activities')
      .map(([, { startedAt, activity, hole, endedAt }]) => [
        startedAt.slice(11, 16),
        activity,
        hole,
        ...(endedAt === undefined ? [] : [endedAt.slice(11, 16)]),
      ])
      .toSorted(([a = ''], [b = '']) => (a < b ? -1 : 1));

  it('is over for metres once another hole is begun: since it was left nothing is recorded, and one Ctrl-U takes both back', async () => {
    const sitting = await secondHole();
    expect(said(sitting)).toContain('Drilling on MBRC003 ended at 10:00 in the shift record: Ctrl-A');
    sitting.press('f8');
    expect(text(sitting)).toMatch(/10:00 +1:00 +GAP: nothing recorded/);
    sitting.press('escape', 'ctrl-u');
    expect(holes(sitting).at(-1)).toEqual(['08:33', 'drilling', 'MBRC003']);
    expect(shiftThings(shiftOf(sitting), 'activities')).not.toEqual([]);
  });

  it('typed late is the one that the rig was on then, not the one in hand, and the answer names it', async () => {
    const sitting = await secondHole();
    sitting.wait(30);
    sitting.press('f8');
    sitting.enter('standby 09:00-09:30 by Ines Falk: no water');
    expect(said(sitting)).toBe('Standby 09:00–09:30 on MBRC003, then drilling again');
    sitting.enter('move 10:10-10:50');
    expect(said(sitting)).toBe('Moving to the next pad 10:10–10:50, no hole');
    sitting.enter('breakdown 11:10-11:20 hose');
    expect(said(sitting)).toBe('Breakdown 11:10–11:20 on MBRC004');
    expect(holes(sitting).slice(-5)).toEqual([
      ['08:33', 'drilling', 'MBRC003', '10:00'],
      ['09:00', 'standby', 'MBRC003'],
      ['09:30', 'drilling', 'MBRC003', '10:00'],
      ['10:10', 'move', undefined, '10:50'],
      ['11:10', 'breakdown', 'MBRC004', '11:20'],
    ]);
  });
});
