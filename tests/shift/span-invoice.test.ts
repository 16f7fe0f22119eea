import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cents, percentOf, type Rounding } from '../../src/quantity/cents.ts';
import type { Bill, LineFrom } from '../../src/shift/bill.ts';
import { centsBeforeTax, invoiceOf } from '../../src/shift/invoice.ts';
import { runs } from '../support/long-run.ts';

/** The bill of a shift that comes to so much before tax, in one line. */
function billed(amount: number, taxPercent: number | undefined, rounding: Rounding = 'half-up') {
  const from: LineFrom = { subject: 'metres', of: 'ZQRC004' };
  const line = { what: 'metres ZQRC004', cents: cents(amount, 'down'), from };
  const tax =
    taxPercent === undefined
      ? []
      : [
          {
            what: `tax ${taxPercent} %`,
            cents: percentOf(amount, taxPercent, rounding),
            from: { subject: 'bill' as const },
            taxPercent,
          },
        ];
  const lines = [line, ...tax];
  const total = cents(
    lines.reduce((sum, each) => sum + each.cents, 0),
    'down',
  );
  return { bill: { lines, total } satisfies Bill, contract: { taxPercent, rounding } };
}

describe('several shifts on one invoice', () => {
  it('are taxed once on their sum, not shift by shift: three that each end on half a cent of tax', () => {
    // 100.05 three times is 300.15: tax 30.015, 30.02 half up. Shift by shift it would be 3 × 10.01 = 30.03.
    const shifts = [billed(10_005, 10), billed(10_005, 10), billed(10_005, 10)];
    expect(shifts.map(({ bill }) => bill.total)).toEqual([11_006, 11_006, 11_006]);
    expect(invoiceOf(shifts)).toMatchObject({
      lines: [
        { what: 'metres ZQRC004', cents: 30_015 },
        { what: 'tax 10 %', cents: 3002, taxPercent: 10 },
      ],
      total: 33_017,
    });
  });

  it('are taxed apart where their contracts have another tax, or none', () => {
    const { lines, total } = invoiceOf([billed(10_000, 10), billed(20_000, 5), billed(30_000, undefined)]);
    expect(lines.map(({ what, cents: amount }) => [what, amount])).toEqual([
      ['metres ZQRC004', 60_000],
      ['tax 10 %', 1000],
      ['tax 5 %', 1000],
    ]);
    expect(total).toBe(62_000);
  });

  it('always come to the sum of their lines, and before tax to the sum of the shifts', () => {
    const amount = fc.integer({ min: 0, max: 5_000_000 });
    const tax = fc.constantFrom(undefined, 5, 7.7, 10, 12.5);
    const rounding = fc.constantFrom<Rounding>('half-up', 'half-even', 'down');
    const shift = fc.tuple(amount, tax, rounding).map(([of, percent, round]) => billed(of, percent, round));
    fc.assert(
      fc.property(fc.array(shift, { maxLength: 12 }), (shifts) => {
        const invoice = invoiceOf(shifts);
        expect(invoice.lines.reduce((sum, line) => sum + line.cents, 0)).toBe(invoice.total);
        expect(centsBeforeTax(invoice)).toBe(shifts.reduce((sum, { bill }) => sum + centsBeforeTax(bill), 0));
      }),
      { numRuns: runs(500) },
    );
  });
});

describe('a percentage of an amount', () => {
  it('hits a half only where there is one', () => {
    expect(percentOf(50, 1.1, 'half-up')).toBe(1);
    expect(percentOf(500, 4.1, 'half-up')).toBe(21); // 20.5, which 500 × 4.1 misses in floating point
    expect(percentOf(500, 4.1, 'half-even')).toBe(20);
  });
});
