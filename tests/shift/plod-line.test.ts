import { describe, expect, test } from 'vitest';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import { instantMs, stamp } from '../../src/quantity/stamp.ts';
import { plodFromCsv } from '../../src/shift/plod-csv.ts';
import { type NewPlodLine, type PlodContext, parsePlodLine } from '../../src/shift/plod-line.ts';
import { at, granted, RULES } from './build.ts';

const CONTEXT: PlodContext = {
  activities: RULES.activities,
  holes: new Map([
    ['ZQRC004', 'ZQRC004'],
    ['ZQRC005', 'ZQRC005'],
  ]),
  startsAt: at('06:00'),
  endsAt: at('18:00'),
  stamps: [],
  above: [],
  drilledMm: new Map([['ZQRC004', depthFromMetres(96)]]),
};
const lines = (...texts: readonly string[]): readonly NewPlodLine[] => {
  const above: NewPlodLine[] = [];
  for (const text of texts) above.push(granted(parsePlodLine(text, { ...CONTEXT, above })));
  return above;
};
const problem = (text: string, ...before: readonly string[]): string | undefined => {
  const read = parsePlodLine(text, { ...CONTEXT, above: lines(...before) });
  return read.ok ? undefined : read.findings[0]?.problem;
};

test('a line takes the words of the driller’s sheet that the project maps, as a CSV does', () => {
  const written = [
    { written: 'Smoko', activity: 'crib' },
    { written: 'Tool box', activity: 'prestart' },
  ];
  const read = (text: string) => parsePlodLine(text, { ...CONTEXT, written, above: [] });
  expect(granted(read('06:00-06:30 smoko'))).toMatchObject({ activity: 'crib' });
  expect(granted(read("06:00-06:30 'tool box'"))).toMatchObject({ activity: 'prestart' });
  expect(granted(read("06:00-06:30 'lunch'"))).toMatchObject({ activity: 'lunch' });
});

describe('a line of a plod', () => {
  test('has times, an activity, a hole, metres, shots, consumables and a remark', () => {
    expect(lines('06:00-07:30 d zqrc004 0-54 2sh used 1 hammer bit, 2 subs: slow, wet')).toEqual([
      {
        activity: 'drilling',
        minutes: 90,
        startsAt: at('06:00'),
        endsAt: at('07:30'),
        hole: 'ZQRC004',
        fromMm: 0,
        toMm: 54_000,
        shots: 2,
        used: [
          { count: 1, item: 'hammer bit' },
          { count: 2, item: 'subs' },
        ],
        remark: 'slow, wet',
      },
    ]);
  });

  test('goes on from the line above in time, in hole and in metres', () => {
    expect(lines('0600-0730 d zqrc004 0-54', '-0800 s', '-1100 d -72').at(-1)).toMatchObject({
      startsAt: at('08:00'),
      endsAt: at('11:00'),
      hole: 'ZQRC004',
      fromMm: 54_000,
      toMm: 72_000,
    });
  });

  test('has hours where the sheet has no times, and an activity as the sheet calls it', () => {
    expect(lines("1:30h 'daywork'", '1.5h s')).toEqual([
      { activity: 'daywork', minutes: 90 },
      { activity: 'standby', minutes: 90 },
    ]);
  });

  test('of a night shift runs past midnight', () => {
    const night = { ...CONTEXT, startsAt: at('18:00'), endsAt: at('06:00', 1) };
    const read = granted(parsePlodLine('23:30-00:45 d', night));
    expect([read.startsAt, read.endsAt, read.minutes]).toEqual([at('23:30'), at('00:45', 1), 75]);
  });

  test('of a night in which the clock was set back is read by the clock of its own hour, also in the hour that came twice', () => {
    const later = (clock: string) => stamp(instantMs(at(clock, 1)) + 3_600_000, 420);
    const night = {
      ...CONTEXT,
      startsAt: at('18:00'),
      endsAt: later('06:00'),
      // At 03:00 it was 02:00 again: a rod at 01:50, an activity at 02:20 of the second time.
      stamps: [at('01:50', 1), later('02:20')],
    };
    const minutes = (...texts: readonly string[]) => {
      const above: NewPlodLine[] = [];
      for (const text of texts) above.push(granted(parsePlodLine(text, { ...night, above })));
      return above.map((line) => line.minutes);
    };
    expect(minutes('1800-0150 d', '-0220 s', '-0600 d')).toEqual([470, 90, 220]);
    expect(minutes('1800-0400 d', '-0600 d')).toEqual([660, 120]);
  });

  test.each([
    ['09:00-08:00 d', [], '09:00–08:00 runs backward'],
    ['09:00-09:00 d', [], '09:00–09:00 takes no time'],
    ['06:00-07:00', [], 'no activity is named'],
    ['06:00-07:00 lunch', [], 'lunch is not read'],
    ['d zqrc004 0-6', [], 'it has neither times nor hours'],
    ['06:00-07:00 d 0-6', [], 'it has metres or shots, but no hole'],
    ['06:00-07:00 d zqrc004 -6', [], 'no line above says where its metres begin'],
    ['06:00-07:00 d zqrc004 12-6', [], 'its metres end at or above where they start, 12–6'],
    ['07:00-08:00 s', ['06:00-07:30 d'], 'it overlaps line 1, drilling 06:00–07:30, by 0:30 h'],
    ['06:00-07:00 d zqrc004 90-102', [], 'it claims 90–102, 12 m, and ZQRC004 is drilled to 96 m'],
    ['-08:00 d zqrc004 0-12', ['06:00-07:00 d zqrc004 6-18'], 'its metres are on line 1 already'],
    ['06:00-07:00 d used bit', [], 'used needs how many, then what'],
  ])('is refused: %s', (text, before, words) => {
    expect(problem(text, ...before)).toBe(words);
  });

  test('that looks wrong is taken as the sheet has it behind =', () => {
    expect(problem('07:00-08:00 s =', '06:00-07:30 d')).toBeUndefined();
    expect(problem('06:00-07:00 d zqrc004 90-102 =')).toBeUndefined();
    expect(problem('09:00-08:00 d =')).toBe('09:00–08:00 runs backward');
  });

  test('of twelve on a usual sheet costs 139 keys with their Enters', () => {
    const typed = [
      '0600-0630 t',
      '-0830 d zqrc004 0-30',
      '-0845 r 1sh',
      '-1030 d -60',
      '-1040 r 1sh',
      '-1100 s',
      '-1240 d -84',
      '-1310 b: hose',
      '-1430 d -96',
      '-1500 m',
      '-1730 s',
      '-1800 t',
    ];
    expect(lines(...typed)).toHaveLength(12);
    const keys = typed.reduce((sum, each) => sum + each.length + 1, 0);
    expect(keys).toBe(139);
  });
});

test('wet metres are all of a line or some, and never others than it claims', () => {
  const [all, some] = lines('06:00-07:30 d zqrc004 0-54 wet', '-0800 d -60 wet57-60');
  expect([all?.wetFromMm, all?.wetToMm, some?.wetFromMm, some?.wetToMm]).toEqual([0, 54_000, 57_000, 60_000]);
  const fault = (text: string) => {
    const read = parsePlodLine(text, CONTEXT);
    return read.ok ? undefined : read.findings[0]?.problem;
  };
  expect(fault('06:00-07:30 d zqrc004 0-54 wet48-60')).toBe('wet 48–60 is not among its metres, 0–54');
  expect(fault('06:00-07:30 s wet')).toBe('it calls metres wet and claims none');
});

describe('a plod from a CSV', () => {
  const columns = {
    from: 'Start',
    to: 'End',
    hours: 'Hrs',
    activity: 'Task',
    hole: 'Hole',
    metresFrom: 'From',
    metresTo: 'To',
    activities: [{ written: 'Drill', activity: 'drilling' }],
  };
  const head = ['Start', 'End', 'Hrs', 'Task', 'Hole', 'From', 'To'];
  const read = (...rows: readonly (readonly string[])[]) =>
    plodFromCsv([head, ...rows], columns, CONTEXT, false);

  test('reads as the typed lines do', () => {
    expect(
      granted(
        read(
          ['06:00', '07:30', '', 'DRILL', 'zqrc004', '0', '54'],
          ['07:30', '8:00', '', 'Standby', '', '', ''],
        ),
      ),
    ).toEqual(lines('06:00-07:30 d zqrc004 0-54', '-08:00 s'));
    expect(granted(read(['', '', '1.5', 'Daywork', '', '', '']))).toEqual(lines("1.5h 'Daywork'"));
  });

  test('has its wet metres in a column: all of a line, or some', () => {
    const wet = (cell: string) =>
      plodFromCsv(
        [
          [...head, 'Wet'],
          ['06:00', '07:30', '', 'Drill', 'ZQRC004', '0', '54', cell],
        ],
        { ...columns, wet: 'Wet' },
        CONTEXT,
        false,
      );
    expect(granted(wet('Yes'))).toEqual(lines('06:00-07:30 d zqrc004 0-54 wet'));
    expect(granted(wet('48-54'))).toEqual(lines('06:00-07:30 d zqrc004 0-54 wet48-54'));
    expect(granted(wet('no'))).toEqual(lines('06:00-07:30 d zqrc004 0-54'));
    const bad = wet('6');
    expect(bad.ok ? '' : bad.findings[0]?.problem).toBe('6 does not say which metres are wet: yes, or 60-66');
  });

  test('names every record that can not be taken, and a column that is not there', () => {
    const bad = read(
      ['6 am', '07:30', '', 'Drill', '', '', ''],
      ['07:00', '08:00', '', 'Drill', 'ZQ9', '', ''],
    );
    expect(bad.ok ? [] : bad.findings.map(({ place, problem }) => [place.thing, problem])).toEqual([
      ['record 1', '6 am is not a time of day'],
      ['record 2', 'ZQ9 is not a hole of this project'],
    ]);
    const lost = plodFromCsv([['Start', 'Task']], columns, CONTEXT, false);
    expect(lost.ok ? '' : lost.findings[0]?.problem).toBe('it has no column End, Hrs, Hole, From, To');
  });
});
