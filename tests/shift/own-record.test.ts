import { describe, expect, test } from 'vitest';
import { holeFacts } from '../../src/shift/hole-facts.ts';
import { ownRecord, rigAt } from '../../src/shift/own-record.ts';
import { at, doing, ended, hole, RULES, rod, STARTED } from './build.ts';

const shift = ended(
  doing(
    STARTED,
    ['06:00', { activity: 'drilling', hole: 'ZQRC004', used: [{ item: 'hammer bit', count: 1 }] }],
    ['12:00', { activity: 'breakdown', hole: 'ZQRC004' }],
    ['13:00', { activity: 'drilling', hole: 'ZQRC005', used: [{ item: 'hammer bit', count: 2 }] }],
  ),
  '18:00',
);
const spans = (depths: readonly (readonly [string, number])[]) => ({
  rods: depths.map(([clock, depthM]) => rod(clock, depthM)),
});
const metresOf = (...holes: readonly ReturnType<typeof hole>[]) =>
  ownRecord(shift, holes, at('20:00')).metres.map(({ hole: id, fromMm, toMm, charge }) => [
    id,
    fromMm,
    toMm,
    charge,
  ]);

describe('our own record of a shift', () => {
  test('has the metres of the rods stamped in it, each from the foot of the rod above', () => {
    const drilled = hole(
      'ZQRC004',
      spans([
        ['05:30', 6],
        ['07:00', 12],
        ['08:00', 18],
        ['18:00', 24],
      ]),
    );
    expect(metresOf(drilled)).toEqual([
      ['ZQRC004', 6000, 12_000, 'metres'],
      ['ZQRC004', 12_000, 18_000, 'metres'],
    ]);
  });

  test('keeps the charge class in which a rod was drilled', () => {
    expect(metresOf(hole('ZQRC004', spans([['12:30', 6]])))).toEqual([['ZQRC004', 0, 6000, 'no charge']]);
  });

  test.each([
    ['an hour paid by the hour', 'reaming'],
    ['standby', 'standby'],
    ['an hour that is not paid', 'breakdown'],
  ])(
    'keeps a rod stamped in the very minute from which %s is typed with the drilling before it',
    (_of, next) => {
      const typed = ended(
        doing(
          STARTED,
          ['06:00', { activity: 'drilling', hole: 'ZQRC004' }],
          ['07:00', { activity: next }],
          ['08:00', { activity: 'drilling', hole: 'ZQRC004' }],
        ),
        '18:00',
      );
      const rods = [rod('07:00:05', 6), rod('07:01', 12), rod('08:00:59', 18)];
      const charges = ownRecord(typed, [hole('ZQRC004', { rods })], at('20:00')).metres.map(
        (each) => each.charge,
      );
      expect(charges).toEqual([
        'metres',
        RULES.activities.find((each) => each.code === next)?.charge,
        'metres',
      ]);
    },
  );

  test('starts a tail where its own drilling starts, not at surface', () => {
    const drilling = [
      { method: 'pre-collar', rig: 'RIG2', fromMm: 0, toMm: 40_000, startedAt: at('06:00', -9) },
      { method: 'RC', rig: 'RIG1', fromMm: 40_000, startedAt: at('06:00') },
    ];
    expect(metresOf(hole('ZQRC004', { drilling, ...spans([['07:00', 46]]) }))).toEqual([
      ['ZQRC004', 40_000, 46_000, 'metres'],
    ]);
  });

  test('keeps the last rod above a tail, whose drilling starts at its foot', () => {
    const drilling = [0, 6000].map((fromMm, index) => ({
      method: 'RC',
      rig: 'RIG1',
      fromMm,
      startedAt: at(index === 0 ? '06:00' : '07:30'),
    }));
    const both = hole('ZQRC004', {
      drilling,
      ...spans([
        ['07:00', 6],
        ['08:00', 12],
      ]),
    });
    expect(metresOf(both)).toEqual([
      ['ZQRC004', 0, 6000, 'metres'],
      ['ZQRC004', 6000, 12_000, 'metres'],
    ]);
  });

  test('leaves out what another rig drilled', () => {
    const drilling = [{ method: 'RC', rig: 'RIG2', fromMm: 0, startedAt: at('05:00') }];
    expect(metresOf(hole('ZQRC006', { drilling, ...spans([['07:00', 6]]) }))).toEqual([]);
  });

  test('does not depend on the order in which rods stand in the file', () => {
    const rods = [rod('08:00', 12), rod('07:00', 6)];
    expect(metresOf(hole('ZQRC004', { rods }))).toEqual([
      ['ZQRC004', 0, 6000, 'metres'],
      ['ZQRC004', 6000, 12_000, 'metres'],
    ]);
  });

  test('counts shots by hole and consumables by item', () => {
    const shots = ['07:30', '09:30', '19:00'].map((clock) => ({
      run: 'k1-1',
      depthMm: 1000,
      dipDeg: -60,
      at: at(clock),
      by: 'Ada',
    }));
    const own = ownRecord(shift, [hole('ZQRC004', { shots })], at('20:00'));
    expect([...own.shots]).toEqual([['ZQRC004', 2]]);
    expect([...own.consumables]).toEqual([['hammer bit', 3]]);
  });

  test('has the time by activity, class and hole', () => {
    expect(ownRecord(shift, [], at('20:00')).work).toEqual([
      { activity: 'drilling', charge: 'metres', hole: 'ZQRC004', minutes: 360 },
      { activity: 'breakdown', charge: 'no charge', hole: 'ZQRC004', minutes: 60 },
      { activity: 'drilling', charge: 'metres', hole: 'ZQRC005', minutes: 300 },
    ]);
  });
});

test('the rig on a hole is that of the drilling started last, and none before the first', () => {
  const drilling = [
    { method: 'RC', rig: 'RIG1', fromMm: 60_000, startedAt: at('12:00') },
    { method: 'RC', rig: 'RIG2', fromMm: 0, startedAt: at('06:00') },
  ];
  const both = hole('ZQRC004', { drilling });
  expect(['05:59', '06:00', '12:00'].map((clock) => rigAt(both, at(clock)))).toEqual([
    undefined,
    'RIG2',
    'RIG1',
  ]);
});

describe('facts of a hole for the bill', () => {
  const factsOf = (tables: Parameters<typeof hole>[1]) =>
    holeFacts([hole('ZQRC004', tables)], 'RIG1', at('06:00'), at('18:00')).get('ZQRC004');
  const decided = (kind: string, clock: string) => ({ kind, at: at(clock) });
  const rods = [rod('07:00', 6), rod('08:00', 12)];

  test('are its wet stretches, none counted twice', () => {
    const wet = [
      [8, 12],
      [0, 2],
      [10, 14],
      [14, 15],
      [1, 2],
    ].map(([from = 0, to = 0]) => ({
      fromMm: from * 1000,
      toMm: to * 1000,
      moisture: 'wet',
    }));
    const dry = { fromMm: 0, toMm: 30_000, moisture: 'dry' };
    expect(factsOf({ stream: [...wet, dry] })?.wet).toEqual([
      { fromMm: 0, toMm: 2000 },
      { fromMm: 8000, toMm: 15_000 },
    ]);
  });

  test('are the whole of it where it was ended in this shift', () => {
    expect(factsOf({ rods, decisions: [decided('ended', '09:00')] })?.finished).toEqual({
      fromMm: 0,
      toMm: 12_000,
    });
    expect(
      factsOf({ rods, decisions: [decided('ended early', '09:00'), decided('held', '09:30')] })?.finished,
    ).toBeDefined();
  });

  test.each([
    ['that is not ended', { rods, decisions: [decided('extended', '09:00')] }],
    ['ended in another shift', { rods, decisions: [decided('ended', '18:00')] }],
    ['reopened since', { rods, decisions: [decided('ended', '09:00'), decided('reopened', '10:00')] }],
    ['without a metre drilled', { decisions: [decided('ended', '09:00')] }],
    [
      'that another rig ended',
      {
        rods,
        decisions: [decided('ended', '09:00')],
        drilling: [{ rig: 'RIG2', fromMm: 0, startedAt: at('06:00') }],
      },
    ],
  ])('have no end of a hole %s', (_what, tables) => {
    expect(factsOf(tables)?.finished).toBeUndefined();
  });
});
