import { describe, expect, test } from 'vitest';
import type { Stamp } from '../../src/quantity/stamp.ts';
import { emptyDocument } from '../../src/record/document.ts';
import { startShift } from '../../src/shift/commands.ts';
import { dateOf, notInOrder, recordsByShift } from '../../src/shift/plod-csv-shifts.ts';
import { at, granted, HEADER, having } from './build.ts';

const begun = (date: string, name: 'day' | 'night', days: number, rig = 'RIG1') =>
  having(
    emptyDocument({ kind: 'shift', id: `${rig}_${date}_${name.toUpperCase()}` }),
    startShift({
      ...HEADER,
      rig,
      date,
      name,
      startsAt: at(name === 'day' ? '06:00' : '18:00', days),
    }),
  );
const SHIFTS = [
  begun('2026-03-14', 'day', 0),
  begun('2026-03-14', 'night', 0),
  begun('2026-03-15', 'day', 1),
  begun('2026-03-15', 'day', 1, 'RIG2'),
];
const COLUMNS = { date: 'Date', shift: 'D/N', rig: 'Rig', sheet: 'No', activity: 'Task' };
const HEAD = ['Date', 'D/N', 'Rig', 'No', 'Task'];
const read = (rows: readonly (readonly string[])[], columns: object = {}, only?: string) =>
  recordsByShift([HEAD, ...rows], { ...COLUMNS, ...columns }, SHIFTS, { rig: 'RIG1', only });
const problems = (result: ReturnType<typeof read>) =>
  result.ok ? [] : result.findings.map(({ place, problem }) => `${place.thing}: ${problem}`);

describe('the records of a CSV of several shifts', () => {
  test('go each to the shift that its date, rig and name say, and keep their numbers', () => {
    const found = granted(
      read([
        ['2026-03-14', 'Day', '', '0411', 'Drill'],
        ['2026-03-14', 'N', '', '0412', 'Drill'],
        ['', '', '', '', ''],
        ['2026-03-15', '', 'rig2', '', 'Standby'],
        ['2026-03-14', 'day', 'RIG1', '0411', 'Standby'],
      ]),
    );
    expect(
      found.map(({ shift, sheet, records }) => [shift.id, sheet, records.map((row) => row.at(-1))]),
    ).toEqual([
      ['RIG1_2026-03-14_DAY', '0411', ['Task', 'Drill', undefined, undefined, undefined, 'Standby']],
      ['RIG1_2026-03-14_NIGHT', '0412', ['Task', undefined, 'Drill', undefined, undefined, undefined]],
      ['RIG2_2026-03-15_DAY', undefined, ['Task', undefined, undefined, undefined, 'Standby', undefined]],
    ]);
  });

  test('are refused, each named, where their shift is not certain', () => {
    expect(
      problems(
        read([
          ['2026-03-14', '', '', '', 'Drill'],
          ['2026-03-16', 'day', '', '', 'Drill'],
          ['2026-03-15', 'swing', '', '', 'Drill'],
          ['4/3/2026', 'day', '', '', 'Drill'],
          ['', 'day', '', '', 'Drill'],
        ]),
      ),
    ).toEqual([
      'record 1: RIG1 has two shifts that began on 2026-03-14',
      'record 2: RIG1 has no day shift recorded that began on 2026-03-16',
      'record 3: swing is neither day nor night',
      'record 4: 4/3/2026 can be 2026-03-04 or 2026-04-03',
      'record 5: it has no date',
    ]);
    const two = [
      ['2026-03-15', '', '', '0411', 'Drill'],
      ['2026-03-15', '', '', '0412', 'Drill'],
    ];
    expect(problems(read(two))).toEqual([
      'record 2: RIG1_2026-03-15_DAY has sheet 0411 in this file already',
    ]);
    expect(problems(read(two.slice(1), {}, 'RIG1_2026-03-14_DAY'))).toEqual([
      'record 1: it is of RIG1_2026-03-15_DAY, and RIG1_2026-03-14_DAY was named',
    ]);
    expect(problems(read([]))).toEqual(['heading line: no record stands below it']);
    expect(problems(read(two, { date: 'When' }))).toEqual(['heading line: it has no column When']);
  });
});

test('lines of the small hours that have the date of the day, not of their shift, are found by their order', () => {
  const [, night] = SHIFTS;
  if (night === undefined) throw new Error('no night');
  const line = (startsAt: Stamp, endsAt: Stamp) => ({ activity: 'standby', minutes: 60, startsAt, endsAt });
  const inTurn = [line(at('18:00'), at('19:00')), line(at('01:00', 1), at('02:00', 1))];
  expect(notInOrder(night, inTurn)).toBeUndefined();
  expect(notInOrder(night, inTurn.toReversed())).toMatchObject({
    place: { thing: 'RIG1_2026-03-14_NIGHT' },
    excerpt: '18:00–19:00  1:00  standby',
    problem: 'it begins before the line above it',
  });
});

test('a date is read as it is said, or where it has one reading; any other is no date', () => {
  const read = (text: string, order?: 'd/m/y' | 'm/d/y') => {
    const date = dateOf(text, order);
    return typeof date === 'string' ? date : date.problem;
  };
  expect(read('2026-03-04')).toBe('2026-03-04');
  expect(read('2026-03-04', 'd/m/y')).toBe('2026-03-04');
  expect(read('4/3/2026', 'd/m/y')).toBe('2026-03-04');
  expect(read('4/3/26', 'd/m/y')).toBe('2026-03-04');
  expect(read('3.4.2026', 'm/d/y')).toBe('2026-03-04');
  expect(read('14/3/2026')).toBe('2026-03-14');
  expect(read('3/14/2026')).toBe('2026-03-14');
  expect(read('3/3/2026')).toBe('2026-03-03');
  expect(read('4/3/2026')).toBe('4/3/2026 can be 2026-03-04 or 2026-04-03');
  expect(read('14/3/26')).toBe('14/3/26 does not say its year in four figures');
  expect(read('3/14/2026', 'd/m/y')).toBe('3/14/2026 is not a date, written d/m/y');
  expect(read('30/2/2026', 'd/m/y')).toBe('30/2/2026 is not a date, written d/m/y');
  expect(read('2026-02-30')).toBe('2026-02-30 is not a date');
  expect(read('Monday')).toBe('Monday is not a date');
});
