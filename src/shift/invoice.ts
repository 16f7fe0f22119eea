import { type Cents, cents, percentOf } from '../quantity/cents.ts';
import type { Bill, BillLine } from './bill.ts';
import { sumBy } from './shift-record.ts';
import type { Contract } from './shift-rules.ts';

/** The bill of a shift, and the terms that it was worked out by. */
export interface BilledShift {
  readonly bill: Bill;
  readonly contract: Pick<Contract, 'taxPercent' | 'rounding'>;
}

/** The lines of a bill that tax is counted on. */
export function beforeTax({ lines }: Bill): readonly BillLine[] {
  return lines.filter((line) => line.taxPercent === undefined);
}

/** What a bill comes to before tax. */
export function centsBeforeTax(bill: Bill): Cents {
  return totalOf(beforeTax(bill));
}

/**
 * Shifts as one invoice: what each of their bills says, line by line before tax, then tax counted once on the sum and rounded once, as the
 * contract rounds. So a reader checks the tax with one sum, and the lines always make the total. Shifts of another tax or rounding
 * are taxed apart.
 */
export function invoiceOf(shifts: readonly BilledShift[]): Bill {
  const all = shifts.flatMap(({ bill }) => beforeTax(bill));
  const sums = sumBy(
    all,
    (line) => line.what,
    (line) => line.cents,
  );
  const byName = new Map(all.map((line) => [line.what, line]));
  const lines = [...byName.values()].map(
    (line): BillLine => ({ ...line, cents: cents(sums.get(line.what) ?? 0, 'down') }),
  );
  const terms = new Map(
    shifts.map(({ contract }) => [`${contract.taxPercent} ${contract.rounding}`, contract]),
  );
  const taxes = [...terms.values()].flatMap(({ taxPercent, rounding }): readonly BillLine[] => {
    if (taxPercent === undefined) return [];
    const alike = shifts.filter(
      ({ contract }) => contract.taxPercent === taxPercent && contract.rounding === rounding,
    );
    const base = alike.reduce((sum, { bill }) => sum + centsBeforeTax(bill), 0);
    return [
      {
        what: `tax ${taxPercent} %`,
        cents: percentOf(base, taxPercent, rounding),
        from: { subject: 'bill' },
        taxPercent,
      },
    ];
  });
  const taxed = [...lines, ...taxes];
  return { lines: taxed.filter((line) => line.cents !== 0), total: totalOf(taxed) };
}

function totalOf(lines: readonly BillLine[]): Cents {
  return cents(
    lines.reduce((sum, line) => sum + line.cents, 0),
    'down',
  );
}
