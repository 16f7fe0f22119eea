import { describe, expect, test } from 'vitest';
import type { Document, Thing } from '../../src/record/document.ts';
import { emptyDocument } from '../../src/record/document.ts';
import { startShift } from '../../src/shift/commands.ts';
import { queryList } from '../../src/shift/query-list.ts';
import {
  at,
  claimed,
  doing,
  ended,
  HEADER,
  having,
  hole,
  rod,
  rulesOf,
  STARTED,
  withContract,
} from './build.ts';

const rules = rulesOf(
  withContract({
    bitSizes: [{ toMm: 120, metreRates: [{ toM: 50, centsPerM: 7000 }, { centsPerM: 8420 }] }],
  }),
);
const bit = (shift: Document, thing: Thing): Document => ({
  ...shift,
  tables: { ...shift.tables, bits: { 'k9-1': thing } },
});
const drilled = hole('ZQRC004', {
  rods: [rod('07:00', 42), rod('08:00', 48), rod('09:00', 54), rod('10:00', 60)],
});
const shift = ended(doing(STARTED, ['06:00', { activity: 'drilling', hole: 'ZQRC004' }]), '18:00');
const bills = (document: Document, others: readonly Document[] = [], holes = [drilled]) => {
  const { ownBill, plodBill } = queryList(document, [...holes, ...others], rules, at('20:00'));
  return [ownBill, plodBill].map((bill) => bill.lines.map((line) => [line.what, line.cents]));
};

// 80.00 a metre to 50 m, 95.50 below; with a bit to 120 mm 70.00 and 84.20.
describe('a bit that is changed within a shift', () => {
  test('drills at its own rates from the last rod done by then, on both sides of the bill', () => {
    const changed = claimed(bit(shift, { at: at('09:10'), gaugeTenthsMm: 1143, hole: 'ZQRC004' }), {
      activity: 'drilling',
      minutes: 720,
      hole: 'ZQRC004',
      fromMm: 0 as never,
      toMm: 60_000 as never,
    });
    // 50 × 80.00 + 4 × 95.50 = 4,382.00; 6 × 84.20 = 505.20
    const lines = [
      ['metres ZQRC004', 438_200],
      ['metres ZQRC004, bit to 120 mm', 50_520],
    ];
    expect(bills(changed)).toEqual([lines, lines]);
  });

  test('goes on drilling in the shift after it, and not in that of another rig', () => {
    const night = (rig: string) =>
      bit(
        having(
          emptyDocument({ kind: 'shift', id: `${rig}_2026-03-13_NIGHT` }),
          startShift({ ...HEADER, rig, name: 'night', date: '2026-03-13', startsAt: at('18:00', -1) }),
        ),
        { at: at('23:00', -1), gaugeTenthsMm: 1143 },
      );
    // 50 × 70.00 + 10 × 84.20
    expect(bills(shift, [night('RIG1')])[0]).toEqual([['metres ZQRC004, bit to 120 mm', 434_200]]);
    expect(bills(shift, [night('RIG2')])[0]).toEqual([['metres ZQRC004', 495_500]]);
  });

  test('drills from the depth at which it was measured, where that was said', () => {
    const measured = hole('ZQRC004', {
      rods: [rod('07:00', 42), rod('10:00', 60)],
      bits: [{ depthMm: 51_000, bitMm: 114.3, at: at('12:00'), by: 'Ada' }],
    });
    // 50 × 80.00 + 1 × 95.50 = 4,095.50; 9 × 84.20 = 757.80
    expect(bills(shift, [], [measured])[0]).toEqual([
      ['metres ZQRC004', 409_550],
      ['metres ZQRC004, bit to 120 mm', 75_780],
    ]);
  });

  test('goes with the rig to its next hole, whichever hole was in hand, whatever the usual bit of the rig is', () => {
    const rig = (clock: string) => ({
      method: 'RC',
      rig: 'RIG1',
      fromMm: 0,
      bitMm: 140,
      startedAt: at(clock),
    });
    const first = hole('ZQRC004', { drilling: [rig('06:00')], rods: [rod('07:00', 42), rod('08:00', 48)] });
    const next = hole('ZQRC005', { drilling: [rig('10:00')], rods: [rod('11:00', 6), rod('12:00', 12)] });
    const put = (clock: string, inHand?: string) =>
      bit(shift, { at: at(clock), gaugeTenthsMm: 1143, ...(inHand === undefined ? {} : { hole: inHand }) });
    // 42 × 80.00; 6 × 70.00; 12 × 70.00
    const lines = [
      ['metres ZQRC004', 336_000],
      ['metres ZQRC004, bit to 120 mm', 42_000],
      ['metres ZQRC005, bit to 120 mm', 84_000],
    ];
    expect(bills(put('07:30', 'ZQRC004'), [], [first, next])[0]).toEqual(lines);
    expect(bills(put('07:30', 'ZQRC005'), [], [first, next])[0]).toEqual(lines);
    // 48 × 80.00; 6 × 80.00, then 6 × 70.00
    expect(bills(put('11:30', 'ZQRC004'), [], [first, next])[0]).toEqual([
      ['metres ZQRC004', 384_000],
      ['metres ZQRC005', 48_000],
      ['metres ZQRC005, bit to 120 mm', 42_000],
    ]);
  });

  test('gives way to another usual bit of the rig, written to project.json before the next hole', () => {
    const rig = (clock: string, bitMm: number) => ({
      method: 'RC',
      rig: 'RIG1',
      fromMm: 0,
      bitMm,
      startedAt: at(clock),
    });
    const first = hole('ZQRC004', { drilling: [rig('06:00', 114)], rods: [rod('07:00', 6)] });
    const next = hole('ZQRC005', { drilling: [rig('10:00', 140)], rods: [rod('11:00', 6)] });
    const put = bit(shift, { at: at('05:30'), gaugeTenthsMm: 1143 });
    expect(bills(put, [], [first, next])[0]).toEqual([
      ['metres ZQRC004, bit to 120 mm', 42_000],
      ['metres ZQRC005', 48_000],
    ]);
  });

  test('typed for the minute in which a rod was stamped drills from below that rod', () => {
    const drilled = hole('ZQRC004', { rods: [rod('07:00:20', 6), rod('08:00', 12)] });
    expect(bills(bit(shift, { at: at('07:00'), gaugeTenthsMm: 1143 }), [], [drilled])[0]).toEqual([
      ['metres ZQRC004', 48_000],
      ['metres ZQRC004, bit to 120 mm', 42_000],
    ]);
  });
});
