import { describe, expect, test } from 'vitest';
import type { Document } from '../../src/record/document.ts';
import { recordPlod, signPlod } from '../../src/shift/plod-commands.ts';
import type { NewPlodLine } from '../../src/shift/plod-line.ts';
import { queryList } from '../../src/shift/query-list.ts';
import { shiftThings } from '../../src/shift/shift.ts';
import { figuresOf, sealOf, timesOf } from '../../src/shift/signed.ts';
import { at, doing, ended, granted, having, makerAt, RULES, STARTED } from './build.ts';

const line = (from: string, to: string, activity: string): NewPlodLine => ({
  activity,
  startsAt: at(from),
  endsAt: at(to),
  minutes: (Date.parse(at(to)) - Date.parse(at(from))) / 60_000,
});

/** A sheet on a shift, its crew where it names one. */
const sheet = (shift: Document, lines: readonly NewPlodLine[], crew?: string[]): Document =>
  having(
    shift,
    granted(
      recordPlod(
        shift,
        { sheet: '0412', receivedAt: at('18:10'), ...(crew === undefined ? {} : { crew }) },
        lines,
        makerAt(at('18:10')),
      ),
    ),
  );
const queries = (shift: Document) => queryList(shift, [], RULES, at('19:00')).queries;
const signed = (shift: Document): Document => {
  const { queries: _, ...figures } = queryList(shift, [], RULES, at('19:00'));
  const [plod = ''] = shiftThings(shift, 'plods').map(([id]) => id);
  const times = timesOf(shift);
  const signOff = {
    plod,
    by: 'Ada',
    role: 'geologist',
    at: at('18:30'),
    openQueries: 0,
    ownCents: figures.ownBill.total,
    plodCents: figures.plodBill.total,
    figures: figuresOf(figures),
    times: [...times],
    seal: sealOf(figures, times),
  };
  return having(shift, granted(signPlod(shift, signOff, makerAt(at('18:30')))));
};

const day = ended(
  doing(
    STARTED,
    ['06:00', { activity: 'drilling' }],
    ['12:00', { activity: 'reaming' }],
    ['13:00', { activity: 'travel' }],
    ['14:00', { activity: 'drilling' }],
  ),
  '18:00',
);
const HONEST = [
  line('06:00', '12:00', 'drilling'),
  line('12:00', '13:00', 'reaming'),
  line('13:00', '14:00', 'travel'),
  line('14:00', '18:00', 'drilling'),
];

describe('the activity as the sheet names it', () => {
  test('is compared as well as its class: travel has free time, reaming has none', () => {
    const wrong = HONEST.with(2, line('13:00', '14:00', 'reaming'));
    expect(queries(sheet(day, wrong)).map(({ code, place }) => [code, place.thing])).toContainEqual([
      'plod-activity-differs',
      '13:00–14:00',
    ]);
    expect(queries(sheet(day, HONEST))).toEqual([]);
  });
});

describe('the crew', () => {
  test.each([
    [undefined, undefined],
    [['Bo', 'Cy'], undefined],
    [['Bo Hale', 'cy tan'], undefined],
    [['Bo'], 'crew: the record names Cy, the sheet does not'],
    [
      ['Bo', 'Dee'],
      'crew: the sheet names Dee, the record does not; the record names Cy, the sheet does not',
    ],
  ])('of the sheet (%s) is held against that of the record', (crew, problem) => {
    expect(queries(sheet(day, HONEST, crew)).map((query) => query.problem)).toEqual(
      problem === undefined ? [] : [problem],
    );
  });
});

describe('a signature', () => {
  test('is for the times as well: entries that swap, with every sum as it was, show with both', () => {
    const before = signed(sheet(day, HONEST));
    expect(queries(before)).toEqual([]);
    const activities = Object.fromEntries(
      shiftThings(before, 'activities').map(([id, each]) => {
        const other = { reaming: 'travel', travel: 'reaming' }[each.activity] ?? each.activity;
        return [id, { ...each, activity: other }];
      }),
    );
    const after = { ...before, tables: { ...before.tables, activities } } as Document;
    const [since] = queries(after).filter(({ code }) => code === 'plod-changed-since-signed');
    expect(since?.problem).toContain(
      'Changed since: record 12:00 reaming then; record 13:00 travel then; record 12:00 travel now; record 13:00 reaming now',
    );
  });

  test('given before times were sealed is held to its figures alone', () => {
    const before = signed(sheet(day, HONEST));
    const [[id, { times: _, ...old }] = ['', { times: [] }]] = shiftThings(before, 'signOffs');
    const older = { ...before, tables: { ...before.tables, signOffs: { [id]: old } } } as Document;
    expect(queries(older)).toEqual([]);
  });
});
