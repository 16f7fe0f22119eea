import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatFinding } from '../../src/finding/finding.ts';
import { depthFromMm } from '../../src/quantity/depth.ts';
import { type Document, emptyDocument } from '../../src/record/document.ts';
import { CHARGE_CLASSES } from '../../src/shift/charge-class.ts';
import { startActivity, startShift } from '../../src/shift/commands.ts';
import { endShiftAt } from '../../src/shift/entry-changes.ts';
import { ownRecord } from '../../src/shift/own-record.ts';
import { plodRecord } from '../../src/shift/plod-record.ts';
import { queryList } from '../../src/shift/query-list.ts';
import { figureText, reconcile } from '../../src/shift/reconcile.ts';
import type { PlodLine } from '../../src/shift/shift.ts';
import type { ShiftRecord } from '../../src/shift/shift-record.ts';
import {
  at,
  claimed,
  doing,
  ended,
  granted,
  HEADER,
  having,
  hole,
  makerAt,
  RULES,
  rod,
  STARTED,
} from './build.ts';

const shift = ended(
  doing(
    STARTED,
    ['06:00', { activity: 'travel' }],
    ['07:00', { activity: 'move', hole: 'ZQRC004' }],
    ['08:00', { activity: 'drilling', hole: 'ZQRC004', used: [{ item: 'hammer bit', count: 1 }] }],
    ['12:00', { activity: 'standby', authorisedBy: 'Ada' }],
    ['12:40', { activity: 'drilling', hole: 'ZQRC004' }],
  ),
  '18:00',
);
const HOLES = [
  hole('ZQRC004', {
    rods: [rod('09:00', 6), rod('10:00', 12), rod('13:30', 18)],
    shots: [{ run: 'k1-1', depthMm: 12_000, dipDeg: -60, at: at('12:30'), by: 'Ada' }],
    stream: [{ fromMm: 12_000, toMm: 18_000, moisture: 'wet' }],
  }),
];

type Claim = Omit<PlodLine, 'plod'>;
/** What the driller's sheet says when it is right. */
const HONEST: readonly Claim[] = [
  { activity: 'travel', minutes: 60 },
  { activity: 'move', minutes: 60, hole: 'ZQRC004' },
  {
    activity: 'drilling',
    minutes: 560,
    hole: 'ZQRC004',
    fromMm: depthFromMm(0),
    toMm: depthFromMm(18_000),
    shots: 1,
    used: [{ item: 'hammer bit', count: 1 }],
  },
  { activity: 'standby', minutes: 40 },
];
const claim = (index: number, said: Partial<Claim>): readonly Claim[] =>
  HONEST.map((line, each) => (each === index ? { ...line, ...said } : line));

const queriesOf = (document: Document) => queryList(document, HOLES, RULES, at('20:00')).queries;
const codes = (lines: readonly Claim[]) => queriesOf(claimed(shift, ...lines)).map((query) => query.code);

describe('a plod compared with the record', () => {
  test('that says the same gives no query, and the same bill', () => {
    const { queries, ownBill, plodBill } = queryList(claimed(shift, ...HONEST), HOLES, RULES, at('20:00'));
    expect(queries).toEqual([]);
    expect(plodBill).toEqual(ownBill);
    expect(Object.fromEntries(ownBill.lines.map((line) => [line.what, line.cents]))).toEqual({
      'metres ZQRC004': 18 * 8000,
      'wet metres ZQRC004': 6 * 500,
      'active hourly': 30_000,
      'standby hourly': 26_667,
      'lump sum move': 120_000,
      shots: 9000,
      'hammer bit': 165_000,
    });
  });

  test.each<[string, readonly Claim[], readonly string[]]>([
    ['more standby', claim(3, { minutes: 100 }), ['plod-hours-differ']],
    ['more time on metres, which is not paid', claim(2, { minutes: 600 }), ['plod-hours-differ']],
    ['a rod more', claim(2, { toMm: depthFromMm(24_000) }), ['plod-metres-differ']],
    [
      'another hole',
      claim(2, { hole: 'ZQRC005' }),
      ['plod-metres-differ', 'plod-metres-differ', 'plod-shots-differ', 'plod-shots-differ'],
    ],
    ['a shot more', claim(2, { shots: 2 }), ['plod-shots-differ']],
    ['a bit more', claim(2, { used: [{ item: 'hammer bit', count: 2 }] }), ['plod-consumables-differ']],
    [
      'a thing without a price',
      claim(3, { used: [{ item: 'hose', count: 1 }] }),
      ['plod-consumables-differ', 'item-not-in-contract'],
    ],
    [
      'the same metres twice',
      [
        ...HONEST,
        {
          activity: 'drilling',
          minutes: 0,
          hole: 'ZQRC004',
          fromMm: depthFromMm(0),
          toMm: depthFromMm(6000),
        },
      ],
      ['plod-metres-differ'],
    ],
    [
      'a move to another hole as well',
      [...HONEST, { activity: 'move', minutes: 0, hole: 'ZQRC005' }],
      ['plod-money-differs'],
    ],
  ])('with %s is queried', (_what, lines, expected) => {
    expect(codes(lines)).toEqual(expected);
  });

  test('up to and at the tolerance passes, past it does not', () => {
    expect(codes(claim(2, { minutes: 575 }))).toEqual([]);
    expect(codes(claim(2, { minutes: 576 }))).toEqual(['plod-hours-differ']);
    expect(codes(claim(2, { minutes: 544 }))).toEqual(['plod-hours-differ']);
  });

  test('says what each side has, in its unit, and what to do', () => {
    const [hours, ...more] = queriesOf(claimed(shift, ...claim(3, { minutes: 100 })));
    expect(hours && formatFinding(hours)).toBe(
      'shifts/RIG1_2026-03-14_DAY.json, hours, standby hourly: hours charged as standby hourly: the sheet has 1:40 h, the record 0:40 h: 1:00 h more\n' +
        '  Go through the times with the driller before signing. By activity: standby is in the record 12:00–12:40, on the sheet 1:40 h (line 4).',
    );
    // The 400.00 that the hour comes to follow from it: nothing is left to ask of them.
    expect(more).toEqual([]);
    const [metres] = queriesOf(claimed(shift, ...claim(2, { toMm: depthFromMm(12_000) })));
    expect(metres?.problem).toBe('metres of ZQRC004: the sheet has 12 m, the record 18 m: 6 m less');
  });

  test('with an activity that is not in the list says so, as its time is in no sum', () => {
    const queries = queriesOf(claimed(shift, ...HONEST, { activity: 'lunch', minutes: 30 }));
    expect(queries.map((query) => [query.code, query.excerpt])).toEqual([
      ['plod-activity-unknown', 'lunch 0:30 h'],
    ]);
    expect(queries[0]?.place.thing).toBe('plod 1041, line 5');
  });

  test('in two sheets counts as one claim', () => {
    const [first = [], rest = []] = [HONEST.slice(0, 2), HONEST.slice(2)];
    const one = claimed(shift, ...first);
    const plods = { ...one.tables.plods, 'k3-1': { sheet: '1042', receivedAt: at('19:10') } };
    const lines = Object.fromEntries(
      rest.map((line, index) => [`k3-${index + 2}`, { ...line, plod: 'k3-1' }]),
    );
    const both = {
      ...one,
      tables: { ...one.tables, plods, plodLines: { ...one.tables.plodLines, ...lines } },
    };
    expect(queriesOf(both as Document)).toEqual([]);
  });
});

describe('a move that the sheet has as other work', () => {
  test('is pointed at by the clock where the sheet has hours and no times, once free time makes money of it', () => {
    const [query, ...others] = queriesOf(
      claimed(shift, ...HONEST.map((line, each) => (each === 0 ? { ...line, activity: 'reaming' } : line))),
    );
    expect(others).toEqual([]);
    // 1:00 of travel has 0:30 free; 1:00 of reaming has none
    expect(query?.problem).toBe('bill, active hourly: the sheet has 600.00, the record 300.00: 300.00 more');
    expect(query?.remedy).toContain(
      'By activity: travel is in the record 06:00–07:00, not on the sheet; reaming is not in the record, on the sheet 1:00 h (line 1).',
    );
  });

  test('is pointed at by the clock where it is of another class, or of none that the project has', () => {
    const hours = queriesOf(claimed(shift, ...claim(1, { activity: 'reaming' })));
    expect(hours.map(({ remedy }) => remedy).join(' ')).toContain(
      'move is in the record 07:00–08:00, not on the sheet',
    );
    const [unknown] = queriesOf(
      claimed(shift, ...claim(1, { activity: 'flushing', startsAt: at('07:00'), endsAt: at('08:00') })),
    ).filter(({ code }) => code === 'plod-activity-unknown');
    expect(unknown?.remedy).toBe(
      'Ask the driller what it was from 07:00 to 08:00, where the record has move 07:00–08:00; add it to project.json, under shift, where it is new.',
    );
  });
});

describe('a move over a change of shift', () => {
  test('has its free time once, by what the same rig did in the shift before; another rig or an earlier day has no part in it', () => {
    const begun = (days: number, rig = 'RIG1') => {
      const startsAt = at('18:00', days);
      const header = { ...HEADER, rig, name: 'night' as const, date: '2026-03-13', startsAt };
      const night = having(emptyDocument({ kind: 'shift', id: `${rig}_${days}` }), startShift(header));
      const travel = startActivity(night, RULES, { activity: 'travel' }, makerAt(at('05:40', days + 1)));
      return having(having(night, granted(travel)), granted(endShiftAt(night, at('06:00', days + 1))));
    };
    const hourly = (...before: readonly Document[]) =>
      queryList(shift, [...HOLES, ...before], RULES, at('20:00')).ownBill.lines.find(
        ({ what }) => what === 'active hourly',
      )?.cents;
    // 1:00 less 0:30; 0:20 of that was used before six, so 0:50 is paid
    expect(hourly()).toBe(30_000);
    expect(hourly(begun(-1))).toBe(50_000);
    expect(hourly(begun(-1, 'RIG2'), begun(-3))).toBe(30_000);
  });
});

describe('wet metres', () => {
  const wet = (fromM: number, toM: number): Partial<Claim> => ({
    wetFromMm: depthFromMm(fromM * 1000),
    wetToMm: depthFromMm(toM * 1000),
  });

  test('that the sheet calls wet are compared with the samples, and stand on its bill', () => {
    const { queries, plodBill, ownBill } = queryList(
      claimed(shift, ...claim(2, wet(6, 18))),
      HOLES,
      RULES,
      at('20:00'),
    );
    expect(queries.map(({ place, problem }) => [place.thing, problem])).toEqual([
      [
        'wet, ZQRC004',
        'wet metres of ZQRC004: the sheet has 12 m, the record 6 m: 6 m more; line 3 claims 6–18 wet, samples logged wet are 12–18',
      ],
    ]);
    // 6 m more at 5.00
    expect(plodBill.total - ownBill.total).toBe(3000);
    expect(codes(claim(2, wet(12, 18)))).toEqual([]);
  });

  test('are wet once, though two lines call them wet, and none where they were not drilled', () => {
    const { plodBill, comparisons } = queryList(
      claimed(shift, ...claim(2, wet(6, 15)), {
        activity: 'drilling',
        minutes: 0,
        hole: 'ZQRC004',
        ...wet(12, 24),
      }),
      HOLES,
      RULES,
      at('20:00'),
    );
    expect(comparisons.find(({ subject }) => subject === 'wet')).toMatchObject({ own: 6000, plod: 12_000 });
    expect(plodBill.lines.find(({ what }) => what === 'wet metres ZQRC004')?.cents).toBe(12 * 500);
  });
});

describe('our own record', () => {
  test('is not queried for a plod that has not come yet', () => {
    expect(queriesOf(shift)).toEqual([]);
  });

  test('is questioned where standby has no one named for it, plod or no plod', () => {
    const idle = doing(STARTED, ['06:00', { activity: 'standby' }], ['06:40', { activity: 'drilling' }]);
    const [query] = queryList(idle, [], RULES, at('08:00')).queries;
    expect(query?.code).toBe('standby-not-authorised');
    expect(query?.problem).toBe('standby from 06:00, 0:40 h: who authorised it is not recorded');
  });

  test('is questioned where rods were drilled while it says standby', () => {
    const idle = doing(STARTED, ['06:00', { activity: 'standby', authorisedBy: 'Ada' }]);
    const [query] = queryList(
      idle,
      [hole('ZQRC004', { rods: [rod('07:00', 6)] })],
      RULES,
      at('08:00'),
    ).queries;
    expect(query).toMatchObject({
      code: 'drilled-on-standby',
      place: { hole: 'ZQRC004', fromMm: 0, toMm: 6000 },
    });
  });

  test('is questioned, by the clock, where rods of one hole were drilled while it has the rig on another', () => {
    const both = doing(
      STARTED,
      ['06:00', { activity: 'drilling', hole: 'ZQRC004' }],
      ['08:00', { activity: 'drilling', hole: 'ZQRC005' }],
    );
    const rods = [rod('07:00', 6), rod('08:00:30', 12), rod('08:40', 18), rod('09:10', 24)];
    const { queries } = queryList(both, [hole('ZQRC004', { rods })], RULES, at('10:00'));
    expect(queries.map(({ code, place, problem }) => [code, place.fromMm, place.toMm, problem])).toEqual([
      [
        'drilled-on-another-hole',
        12_000,
        24_000,
        'ZQRC004: 12–24 m, 2 rods, were drilled while the record says Drilling on ZQRC005, since 08:00',
      ],
    ]);
  });
});

const aHole = fc.constantFrom('ZQRC004', 'ZQRC005');
const aCount = (keys: fc.Arbitrary<string>) =>
  fc.array(fc.tuple(keys, fc.integer({ min: 1, max: 9 })), { maxLength: 3 }).map((pairs) => new Map(pairs));
const aRecord: fc.Arbitrary<ShiftRecord> = fc.record({
  work: fc.array(
    fc.record({
      activity: fc.constantFrom('drilling', 'travel', 'move'),
      charge: fc.constantFrom(...CHARGE_CLASSES),
      minutes: fc.nat({ max: 720 }),
      hole: aHole,
    }),
    { maxLength: 6 },
  ),
  metres: fc.array(
    fc
      .tuple(
        aHole,
        fc.nat({ max: 200_000 }),
        fc.integer({ min: 1, max: 6000 }),
        fc.constantFrom(...CHARGE_CLASSES, undefined),
      )
      .map(([id, from, length, charge]) => ({
        hole: id,
        fromMm: depthFromMm(from),
        toMm: depthFromMm(from + length),
        charge,
      })),
    { maxLength: 6 },
  ),
  shots: aCount(aHole),
  consumables: aCount(fc.constantFrom('hammer bit', 'hose')),
});

describe('reconciling', () => {
  const held = (own: ShiftRecord, plod: ShiftRecord) => reconcile(own, plod, RULES, new Map(), {});

  test('a record with itself gives no query, whatever is in it', () => {
    fc.assert(
      fc.property(aRecord, (record) => {
        const { queries, comparisons } = held(record, record);
        expect(queries).toEqual([]);
        expect(comparisons.every((each) => each.difference === 0)).toBe(true);
      }),
    );
  });

  test('the two sides the other way round gives the same differences the other way', () => {
    fc.assert(
      fc.property(aRecord, aRecord, (own, plod) => {
        const differences = (a: ShiftRecord, b: ShiftRecord, sign: number) =>
          held(a, b)
            .comparisons.map((each) => `${each.subject} ${each.of} ${each.difference * sign + 0}`)
            .toSorted();
        expect(differences(plod, own, -1)).toEqual(differences(own, plod, 1));
      }),
    );
  });

  test('leaves no difference out: the lines of both bills add up to their totals', () => {
    fc.assert(
      fc.property(aRecord, aRecord, (own, plod) => {
        const { comparisons, ownBill, plodBill } = held(own, plod);
        const money = comparisons.filter((each) => each.subject === 'money');
        const sum = (side: 'own' | 'plod') => money.reduce((all, each) => all + each[side], 0);
        expect([sum('own'), sum('plod')]).toEqual([ownBill.total, plodBill.total]);
      }),
    );
  });
});

test('figures are written in their own unit', () => {
  expect(figureText('hours', 90)).toBe('1:30 h');
  expect(figureText('metres', 6500)).toBe('6.5 m');
  expect(figureText('shots', 2)).toBe('2');
  expect(figureText('consumables', 3)).toBe('3');
  expect(figureText('money', 123_450)).toBe('1,234.50');
});

test('both records of the example are in the same shape', () => {
  const own = ownRecord(shift, HOLES, at('20:00'));
  const plod = plodRecord(claimed(shift, ...HONEST), RULES);
  expect(Object.keys(plod).sort()).toEqual(Object.keys(own).sort());
});
