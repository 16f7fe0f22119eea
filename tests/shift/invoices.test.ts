import { describe, expect, test } from 'vitest';
import { formatCents } from '../../src/quantity/cents.ts';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import { billOf } from '../../src/shift/bill.ts';
import type { HoleFacts } from '../../src/shift/hole-facts.ts';
import { type ShiftSettings, shiftSettings } from '../../src/shift/settings.ts';
import type { ShiftRecord, Work } from '../../src/shift/shift-record.ts';
import { resolveShiftRules, rulesOn } from '../../src/shift/shift-rules.ts';
import { granted, rulesOf, SETTINGS, withContract } from './build.ts';

type Terms = Partial<ShiftSettings['contract']>;

const metres = (hole: string, fromM: number, toM: number): ShiftRecord['metres'][number] => ({
  hole,
  fromMm: depthFromMetres(fromM),
  toMm: depthFromMetres(toM),
  charge: 'metres',
});
const work = (activity: string, charge: Work['charge'], minutes: number, more: Partial<Work> = {}): Work => ({
  activity,
  charge,
  minutes,
  ...more,
});

/** The invoice of one shift as it is printed: each line, then the total. */
function invoice(
  record: Partial<ShiftRecord>,
  terms: Terms = {},
  facts: Readonly<Record<string, Partial<HoleFacts>>> = {},
): readonly string[] {
  const whole: ShiftRecord = { work: [], metres: [], shots: new Map(), consumables: new Map(), ...record };
  const known = new Map(Object.entries(facts).map(([hole, each]) => [hole, { wet: [], ...each }]));
  const bill = billOf(whole, rulesOf(withContract(terms)).contract, known);
  expect(bill.lines.reduce((sum, line) => sum + line.cents, 0)).toBe(bill.total);
  return [...bill.lines.map((line) => `${line.what} ${formatCents(line.cents)}`), formatCents(bill.total)];
}

// Worked by hand from the terms of SETTINGS: 80.00 a metre to 50 m, 95.50 to 100 m, 110.25 below; active 600.00 an hour, standby
// 400.00; a shot 90.00; a wet metre 5.00; a move 1,200.00; travel free for 30 minutes a hole; a hammer bit 1,500.00 plus 10 %.
describe('an invoice worked by hand, to the cent:', () => {
  test('two bands crossed within a shift, 48 to 132 m', () => {
    // 2 × 80.00 = 160.00; 50 × 95.50 = 4,775.00; 32 × 110.25 = 3,528.00
    expect(invoice({ metres: [metres('ZQRC004', 48, 132)] })).toEqual([
      'metres ZQRC004 8,463.00',
      '8,463.00',
    ]);
  });

  test('the minimum of a shift, consumables apart', () => {
    // 12 × 80.00 = 960.00; 1 h standby 400.00; 5,000.00 − 1,360.00 = 3,640.00; a bit 1,500.00 + 150.00
    const record = {
      metres: [metres('ZQRC004', 0, 12)],
      work: [work('standby', 'standby hourly', 60)],
      consumables: new Map([['hammer bit', 1]]),
    };
    expect(invoice(record, { minimumShiftCents: 500_000 })).toEqual([
      'metres ZQRC004 960.00',
      'standby hourly 400.00',
      'minimum of the shift 3,640.00',
      'hammer bit 1,650.00',
      '6,650.00',
    ]);
  });

  test('hours in half hours, rounded up', () => {
    // 1:10 is 1.5 h × 400.00 = 600.00; 0:31 is 1 h × 600.00
    const record = {
      work: [
        work('standby', 'standby hourly', 40),
        work('standby', 'standby hourly', 30),
        work('reaming', 'active hourly', 31),
      ],
    };
    expect(invoice(record, { hourStep: { minutes: 30, rounding: 'up' } })).toEqual([
      'active hourly 600.00',
      'standby hourly 600.00',
      '1,200.00',
    ]);
  });

  test('hours in half hours, to the nearest, the half up', () => {
    // 1:14 is 1 h × 400.00; 0:45 is 1 h × 600.00
    const record = { work: [work('standby', 'standby hourly', 74), work('reaming', 'active hourly', 45)] };
    expect(invoice(record, { hourStep: { minutes: 30, rounding: 'nearest' } })).toEqual([
      'active hourly 600.00',
      'standby hourly 400.00',
      '1,000.00',
    ]);
  });

  test('free move time, a hole', () => {
    // to ZQRC004 1:40 − 0:30 = 1:10 × 600.00 = 700.00; to ZQRC005 0:20, free
    const record = {
      work: [
        work('travel', 'active hourly', 100, { hole: 'ZQRC004' }),
        work('travel', 'active hourly', 20, { hole: 'ZQRC005' }),
      ],
    };
    expect(invoice(record)).toEqual(['active hourly 700.00', '700.00']);
  });

  test('tax as a line of its own', () => {
    // 8,463.00 × 10 % = 846.30
    expect(invoice({ metres: [metres('ZQRC004', 48, 132)] }, { taxPercent: 10 })).toEqual([
      'metres ZQRC004 8,463.00',
      'tax 10 % 846.30',
      '9,309.30',
    ]);
  });

  test('a redrill of which 36 m are not payable', () => {
    // 36 to 54 m: 14 × 80.00 = 1,120.00; 4 × 95.50 = 382.00
    const terms = { notPayable: [{ hole: 'ZQRC004A', fromM: 0, toM: 36, why: 'rods left in the hole' }] };
    expect(invoice({ metres: [metres('ZQRC004A', 0, 54)] }, terms)).toEqual([
      'metres ZQRC004A 1,502.00',
      '1,502.00',
    ]);
  });

  test('a smaller bit, by its own bands', () => {
    // 40 to 62 m with 114.3 mm: 10 × 70.00 = 700.00; 12 × 84.20 = 1,010.40
    const terms = {
      bitSizes: [{ toMm: 120, metreRates: [{ toM: 50, centsPerM: 7000 }, { centsPerM: 8420 }] }],
    };
    const record = { metres: [metres('ZQRC004', 40, 62)] };
    const bit = (bitMm: number, fromM: number) => ({ bitMm, fromMm: depthFromMetres(fromM) });
    expect(invoice(record, terms, { ZQRC004: { bits: [bit(114.3, 0)] } })).toEqual([
      'metres ZQRC004, bit to 120 mm 1,710.40',
      '1,710.40',
    ]);
    // with 139.7 mm: 10 × 80.00 + 12 × 95.50
    expect(invoice(record, terms, { ZQRC004: { bits: [bit(139.7, 0)] } }).at(-1)).toBe('1,946.00');
    // the smaller bit put on at 54 m: 10 × 80.00 + 4 × 95.50 = 1,182.00; 8 × 84.20 = 673.60
    expect(invoice(record, terms, { ZQRC004: { bits: [bit(139.7, 0), bit(114.3, 54)] } })).toEqual([
      'metres ZQRC004 1,182.00',
      'metres ZQRC004, bit to 120 mm 673.60',
      '1,855.60',
    ]);
  });

  test('a booster beside the drilling, shots and wet metres', () => {
    // 18 × 110.25 = 1,984.50; 6 wet × 5.00 = 30.00; 2:05 is 2.5 h × 95.00 = 237.50; 2 × 90.00 = 180.00
    const record = {
      metres: [metres('ZQRC004', 120, 138)],
      work: [work('drilling', 'metres', 125, { beside: ['booster'] })],
      shots: new Map([['ZQRC004', 2]]),
    };
    const terms: Terms = {
      concurrent: [{ item: 'booster', centsPerHour: 9500 }],
      hourStep: { minutes: 30, rounding: 'up' },
    };
    const wet = { fromMm: depthFromMetres(132), toMm: depthFromMetres(140) };
    expect(invoice(record, terms, { ZQRC004: { wet: [wet] } })).toEqual([
      'metres ZQRC004 1,984.50',
      'wet metres ZQRC004 30.00',
      'hours booster 237.50',
      'shots 180.00',
      '2,432.00',
    ]);
  });

  test('the minimum of a hole that is finished at 42 m', () => {
    // 42 × 80.00 = 3,360.00; 5,000.00 − 3,360.00
    const finished = { fromMm: depthFromMetres(0), toMm: depthFromMetres(42) };
    const record = { metres: [metres('ZQRC004', 0, 42)] };
    expect(invoice(record, { minimumHoleCents: 500_000 }, { ZQRC004: { finished } })).toEqual([
      'metres ZQRC004 3,360.00',
      'minimum of ZQRC004 1,640.00',
      '5,000.00',
    ]);
  });
});

describe('terms with dates', () => {
  const terms = { ...SETTINGS.contract, metreRates: [{ centsPerM: 8235 }] };
  const dated = (...contracts: NonNullable<ShiftSettings['contracts']>): ShiftSettings => ({
    ...SETTINGS,
    contracts,
  });
  const perM = (settings: ShiftSettings, rig: string, date: string): number | undefined =>
    rulesOn(rulesOf(settings), rig, date).contract.metreRates[0]?.centsPerM;

  test('never re-price a day before them, and hold for the rig that they name', () => {
    const settings = dated(
      { rig: 'RIG1', from: '2026-03-17', to: '2026-03-20', terms },
      { from: '2026-03-19', terms: { ...terms, metreRates: [{ centsPerM: 9000 }] } },
    );
    expect(
      ['2026-03-16', '2026-03-17', '2026-03-20', '2026-03-21'].map((day) => perM(settings, 'RIG1', day)),
    ).toEqual([8000, 8235, 8235, 9000]);
    expect(['2026-03-17', '2026-03-19'].map((day) => perM(settings, 'RIG2', day))).toEqual([8000, 9000]);
  });

  test.each([
    [[{ from: '2026-03-17', to: '2026-03-16' }], 'it ends on 2026-03-16, before it begins'],
    [
      [{ from: '2026-03-01' }, { from: '2026-03-17' }],
      'it holds on days of the one from 2026-03-01, for every rig',
    ],
  ])('are refused where %j', (contracts, problem) => {
    const resolved = resolveShiftRules(dated(...contracts.map((each) => ({ ...each, terms }))));
    expect(resolved.ok ? '' : resolved.findings[0]?.problem).toBe(problem);
  });

  test('are read from project.json with every term there is', () => {
    const all = {
      ...terms,
      bitSizes: [{ toMm: 120, metreRates: [{ centsPerM: 7000 }] }],
      notPayable: [{ hole: 'ZQRC004A', fromM: 0, toM: 36, why: 'agreed' }],
      concurrent: [{ item: 'booster', centsPerHour: 9500 }],
      hourStep: { minutes: 30, rounding: 'up' },
      taxPercent: 10,
    };
    const parsed = shiftSettings.parse({ ...SETTINGS, contracts: [{ from: '2026-03-17', terms: all }] });
    expect(granted(resolveShiftRules(parsed)).contracts).toHaveLength(1);
  });
});
