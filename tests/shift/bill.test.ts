import { describe, expect, test } from 'vitest';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import { type Bill, billOf } from '../../src/shift/bill.ts';
import type { HoleFacts } from '../../src/shift/hole-facts.ts';
import type { ShiftSettings } from '../../src/shift/settings.ts';
import type { ShiftRecord } from '../../src/shift/shift-record.ts';
import { rulesOf, SETTINGS, withContract } from './build.ts';

const NOTHING: ShiftRecord = { work: [], metres: [], shots: new Map(), consumables: new Map() };
const NO_FACTS: ReadonlyMap<string, HoleFacts> = new Map();

const interval = (fromM: number, toM: number) => ({
  fromMm: depthFromMetres(fromM),
  toMm: depthFromMetres(toM),
});
const drilled = (
  fromM: number,
  toM: number,
  charge: ShiftRecord['metres'][number]['charge'] = 'metres',
  hole = 'ZQRC004',
) => ({ hole, ...interval(fromM, toM), charge });

/** The lines of a bill by their words. */
function linesFor(
  record: Partial<ShiftRecord>,
  contract: Partial<ShiftSettings['contract']> = {},
  facts = NO_FACTS,
): Readonly<Record<string, number>> {
  const bill = billFor(record, contract, facts);
  return Object.fromEntries(bill.lines.map((line) => [line.what, line.cents]));
}

function billFor(
  record: Partial<ShiftRecord>,
  contract: Partial<ShiftSettings['contract']> = {},
  facts = NO_FACTS,
): Bill {
  return billOf({ ...NOTHING, ...record }, rulesOf(withContract(contract)).contract, facts);
}

describe('metres on the bill', () => {
  test('are paid by depth band from surface: 40 to 110 m is ten, fifty and ten metres of three bands', () => {
    expect(linesFor({ metres: [drilled(40, 110)] })).toEqual({
      'metres ZQRC004': 10 * 8000 + 50 * 9550 + 10 * 11_025,
    });
  });

  test('of a re-entry are paid at the depth they are at, not from the top again', () => {
    expect(linesFor({ metres: [drilled(100, 106)] })).toEqual({ 'metres ZQRC004': 6 * 11_025 });
  });

  test('are rounded once a hole, not once a rod', () => {
    const thirds = [drilled(0, 0.333), drilled(0.333, 0.666), drilled(0.666, 0.999)];
    const contract = { metreRates: [{ centsPerM: 100 }] };
    expect(linesFor({ metres: thirds }, contract)).toEqual({ 'metres ZQRC004': 100 });
    expect(linesFor({ metres: thirds }, { ...contract, rounding: 'down' })).toEqual({ 'metres ZQRC004': 99 });
  });

  test('drilled on the hour or without charge are not paid by the metre; those with no activity are', () => {
    expect(linesFor({ metres: [drilled(0, 6, 'active hourly'), drilled(6, 12, 'no charge')] })).toEqual({});
    expect(linesFor({ metres: [{ ...drilled(0, 6), charge: undefined }] })).toEqual({
      'metres ZQRC004': 48_000,
    });
  });

  test('that came up wet carry a surcharge, only where they were drilled in this shift', () => {
    const facts = new Map([['ZQRC004', { wet: [interval(10, 20), interval(38, 44)] }]]);
    expect(linesFor({ metres: [drilled(40, 46)] }, {}, facts)).toEqual({
      'metres ZQRC004': 6 * 8000,
      'wet metres ZQRC004': 4 * 500,
    });
  });

  test('claimed twice are paid twice: the plod shows what the invoice would', () => {
    expect(linesFor({ metres: [drilled(0, 6), drilled(0, 6)] })).toEqual({ 'metres ZQRC004': 2 * 6 * 8000 });
  });
});

describe('hours on the bill', () => {
  test('are paid by class and by the minute; breakdown and drilling by the metre are not', () => {
    const work = [
      { activity: 'reaming', charge: 'active hourly', minutes: 50 },
      { activity: 'standby', charge: 'standby hourly', minutes: 45 },
      { activity: 'breakdown', charge: 'no charge', minutes: 300 },
      { activity: 'drilling', charge: 'metres', minutes: 300 },
    ] as const;
    expect(linesFor({ work })).toEqual({ 'active hourly': 50_000, 'standby hourly': 30_000 });
  });

  test('count off the free time of an activity once a hole, however often the work was taken up again', () => {
    const travel = (minutes: number, hole?: string) =>
      ({ activity: 'travel', charge: 'active hourly', minutes, ...(hole ? { hole } : {}) }) as const;
    expect(linesFor({ work: [travel(20, 'ZQRC004'), travel(25, 'ZQRC004')] })).toEqual({
      'active hourly': 15_000,
    });
    expect(linesFor({ work: [travel(20, 'ZQRC004'), travel(25, 'ZQRC005')] })).toEqual({});
    expect(linesFor({ work: [travel(90)] })).toEqual({ 'active hourly': 60_000 });
  });

  test('of a move told in two lines of which one names no hole are one move, unless drilling lies between', () => {
    const travel = (minutes: number, hole?: string) =>
      ({ activity: 'travel', charge: 'active hourly', minutes, ...(hole ? { hole } : {}) }) as const;
    const drilling = { activity: 'drilling', charge: 'metres', minutes: 60 } as const;
    // 0:20 and 0:40 are 1:00, less 0:30: 0:30 at 600.00
    const once = { 'active hourly': 30_000 };
    expect(linesFor({ work: [travel(20), travel(40, 'ZQRC004')] })).toEqual(once);
    expect(linesFor({ work: [travel(40, 'ZQRC004'), travel(20)] })).toEqual(once);
    // 0:20 is free; of 0:40 to the next hole 0:10 is not
    expect(linesFor({ work: [travel(20), drilling, travel(40, 'ZQRC005')] })).toEqual({
      'active hourly': 10_000,
    });
  });

  test('of two moves that name no hole are two moves where drilling lies between, as they are where the holes are named', () => {
    const travel = (minutes: number, hole?: string) =>
      ({ activity: 'travel', charge: 'active hourly', minutes, ...(hole ? { hole } : {}) }) as const;
    const drilling = { activity: 'drilling', charge: 'metres', minutes: 60 } as const;
    // 0:50 less 0:30 is 0:20, 0:45 less 0:30 is 0:15: together 0:35 at 600.00
    const both = { 'active hourly': 35_000 };
    expect(linesFor({ work: [travel(50, 'ZQRC004'), drilling, travel(45, 'ZQRC005')] })).toEqual(both);
    expect(linesFor({ work: [travel(50), drilling, travel(45)] })).toEqual(both);
    expect(linesFor({ work: [travel(50), drilling, travel(20), travel(25)] })).toEqual(both);
  });

  test('of a move that the shift before began count off what it left of the free time, and nothing once drilling came between', () => {
    const travel = (minutes: number, hole?: string) =>
      ({ activity: 'travel', charge: 'active hourly', minutes, ...(hole ? { hole } : {}) }) as const;
    const drilling = { activity: 'drilling', charge: 'metres', minutes: 60 } as const;
    const hours = (before: ShiftRecord['work'], work: ShiftRecord['work']) =>
      billOf({ ...NOTHING, work }, rulesOf(SETTINGS).contract, NO_FACTS, before).total;
    // 0:20 before leaves 0:10 of 0:30: of 0:40 0:30 is paid, at 600.00 an hour
    expect(hours([drilling, travel(20)], [travel(40, 'ZQRC005'), drilling])).toBe(30_000);
    // 1:00 before leaves none: 0:45 is paid whole; the move to the next hole, 0:50, less its own 0:30
    expect(hours([travel(60)], [travel(45), drilling, travel(50)])).toBe(45_000 + 20_000);
    expect(hours([travel(20), drilling], [travel(40)])).toBe(10_000);
    expect(hours([travel(20, 'ZQRC004')], [travel(40, 'ZQRC005')])).toBe(10_000);
  });

  test('of an activity with a rate of its own stand on a line of their own', () => {
    const work = [
      { activity: 'reaming', charge: 'active hourly', minutes: 60 },
      { activity: 'travel', charge: 'active hourly', minutes: 90 },
    ] as const;
    const contract = { hourlyRates: [{ activity: 'travel', centsPerHour: 20_000 }] };
    expect(linesFor({ work }, contract)).toEqual({ 'active hourly': 60_000, 'hours travel': 20_000 });
  });

  test.each([
    ['half-up', 1],
    ['half-even', 0],
    ['down', 0],
  ] as const)('of half a cent rounded %s come to %s cents', (rounding, cents) => {
    const work = [{ activity: 'reaming', charge: 'active hourly', minutes: 1 }] as const;
    expect(billFor({ work }, { rounding, activeHourlyCents: 30 }).total).toBe(cents);
  });
});

describe('single payments on the bill', () => {
  const move = (hole?: string) =>
    ({ activity: 'move', charge: 'lump sum', minutes: 40, ...(hole ? { hole } : {}) }) as const;

  test('a lump sum is due once a hole, and each time where no hole is named', () => {
    expect(linesFor({ work: [move('ZQRC004'), move('ZQRC004'), move('ZQRC005')] })).toEqual({
      'lump sum move': 240_000,
    });
    expect(linesFor({ work: [move(), move()] })).toEqual({ 'lump sum move': 240_000 });
    expect(linesFor({ work: [move(), move('ZQRC004')] })).toEqual({ 'lump sum move': 120_000 });
    const drilling = { activity: 'drilling', charge: 'metres', minutes: 60 } as const;
    expect(linesFor({ work: [move(), drilling, move('ZQRC005')] })).toEqual({ 'lump sum move': 240_000 });
  });

  test('a lump sum of a move that goes over a change of shift is due in the first of the two alone', () => {
    const move = (hole?: string) =>
      ({ activity: 'move', charge: 'lump sum', minutes: 40, ...(hole ? { hole } : {}) }) as const;
    const drilling = { activity: 'drilling', charge: 'metres', minutes: 60 } as const;
    const due = (before: ShiftRecord['work'], work: ShiftRecord['work']) =>
      billOf({ ...NOTHING, work }, rulesOf(SETTINGS).contract, NO_FACTS, before).total;
    expect(due([drilling, move()], [move('ZQRC005'), drilling, move('ZQRC006')])).toBe(120_000);
    expect(due([move('ZQRC004'), drilling], [move('ZQRC005')])).toBe(120_000);
  });

  test('a lump sum is for its own activity, and only where that was charged so', () => {
    const work = [
      { activity: 'move', charge: 'no charge', minutes: 40, hole: 'ZQRC004' },
      { activity: 'plugging', charge: 'lump sum', minutes: 40, hole: 'ZQRC004' },
    ] as const;
    expect(linesFor({ work })).toEqual({});
  });

  test('shots are paid by number, consumables at cost plus', () => {
    const shots = new Map([
      ['ZQRC004', 2],
      ['ZQRC005', 1],
    ]);
    const consumables = new Map([
      ['hammer bit', 1],
      ['unpriced hose', 4],
    ]);
    expect(linesFor({ shots, consumables })).toEqual({ shots: 27_000, 'hammer bit': 165_000 });
    const { shotCents: _, ...unpaid } = SETTINGS.contract;
    const rules = rulesOf({ ...SETTINGS, contract: unpaid });
    expect(billOf({ ...NOTHING, shots }, rules.contract, NO_FACTS).total).toBe(0);
  });
});

describe('minimums', () => {
  test('fill a short shift up to its minimum, consumables apart', () => {
    const consumables = new Map([['hammer bit', 1]]);
    const lines = linesFor({ metres: [drilled(0, 6)], consumables }, { minimumShiftCents: 100_000 });
    expect(lines).toEqual({
      'metres ZQRC004': 48_000,
      'minimum of the shift': 52_000,
      'hammer bit': 165_000,
    });
    expect(linesFor({ metres: [drilled(0, 30)] }, { minimumShiftCents: 100_000 })).toEqual({
      'metres ZQRC004': 240_000,
    });
  });

  test('fill a finished hole up to its minimum by all its metres, whichever shift drilled them', () => {
    const facts = new Map([['ZQRC004', { wet: [], finished: interval(0, 30) }]]);
    const contract = { minimumHoleCents: 400_000 };
    expect(linesFor({ metres: [drilled(24, 30)] }, contract, facts)).toEqual({
      'metres ZQRC004': 48_000,
      'minimum of ZQRC004': 400_000 - 30 * 8000,
    });
    const unfinished = new Map([['ZQRC004', { wet: [] }]]);
    expect(linesFor({ metres: [drilled(24, 30)] }, contract, unfinished)).toEqual({
      'metres ZQRC004': 48_000,
    });
  });
});

test('a bill comes to the sum of its lines', () => {
  const bill = billFor({ metres: [drilled(0, 66)], shots: new Map([['ZQRC004', 2]]) });
  expect(bill.total).toBe(bill.lines.reduce((all, line) => all + line.cents, 0));
  expect(bill.total).toBe(50 * 8000 + 16 * 9550 + 18_000);
});
