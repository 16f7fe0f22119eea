import type { Finding } from '../finding/finding.ts';
import { formatCents } from '../quantity/cents.ts';
import { localDate, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Bill } from '../shift/bill.ts';
import { invoiceOf } from '../shift/invoice.ts';
import type { Reconciliation } from '../shift/reconcile.ts';
import type { Contract } from '../shift/shift-rules.ts';
import type { SpanFigures } from '../shift/span-figures.ts';

/** A shift of the span with both sides of it. */
export interface Reconciled {
  readonly shift: string;
  /** What our own record comes to, before tax: tax is counted once, on the whole span. */
  readonly ownCents: number;
  /** What the plods come to, before tax; undefined where none has come. */
  readonly plodCents: number | undefined;
  readonly plods: readonly string[];
  readonly signedBy: readonly string[];
  readonly queries: readonly (Finding & { readonly name: string; readonly answer: string })[];
  /** Queries that were open when a sheet was signed, as they were then. */
  readonly exceptions: readonly { readonly by: string; readonly at: Stamp; readonly problem: string }[];
  readonly open: number;
  readonly timeline: readonly string[];
  readonly keys: string;
  /** Lines of the bill before tax. */
  readonly lines: readonly {
    readonly what: string;
    readonly own: number;
    readonly plod: number | undefined;
  }[];
}

/** `signed 2026-03-14 18:00 by NOK with this open: …`. */
export const exceptionText = ({ by, at, problem }: Reconciled['exceptions'][number]): string =>
  `signed ${localDate(at)} ${localTime(at)} by ${by} with this open: ${problem}`;

/** Cents on either side. A plod is compared with our own record of the shifts that have one. */
export interface InvoiceSides {
  /** Of every shift of the span. */
  readonly own: number;
  /** Of those whose plod has come. */
  readonly ownWithPlod: number;
  readonly plod: number;
}

/** A line of the invoice of a span; tax is the last. */
export interface InvoiceLine extends InvoiceSides {
  readonly what: string;
  readonly isTax: boolean;
}

/** Every shift of the span in one pass, with what the invoice should come to, line by line. */
export interface Span {
  readonly from: string;
  readonly to: string;
  readonly currency: string;
  readonly shifts: readonly Reconciled[];
  readonly figures: SpanFigures;
  /** The invoice, tax last; its lines make the totals. */
  readonly invoice: readonly InvoiceLine[];
  readonly total: InvoiceSides;
}

/** A shift with both of its bills and the terms that they were worked out by. */
export interface Billed extends Pick<Reconciliation, 'ownBill' | 'plodBill'> {
  readonly reconciled: Reconciled;
  readonly contract: Contract;
}

/** The invoice of a span: every shift by our own record, and where a plod has come both sides of it. */
export function invoiceLines(shifts: readonly Billed[]): Pick<Span, 'invoice' | 'total'> {
  const withPlod = shifts.filter(({ reconciled }) => reconciled.plods.length > 0);
  const bill = (of: readonly Billed[], side: 'ownBill' | 'plodBill'): Bill =>
    invoiceOf(of.map((each) => ({ bill: each[side], contract: each.contract })));
  const sides = {
    own: bill(shifts, 'ownBill'),
    ownWithPlod: bill(withPlod, 'ownBill'),
    plod: bill(withPlod, 'plodBill'),
  };
  const whats = new Map(
    [sides.own, sides.plod].flatMap(({ lines }) => lines.map((each) => [each.what, each])),
  );
  const amount = ({ lines }: Bill, what: string): number =>
    lines.filter((each) => each.what === what).reduce((sum, each) => sum + each.cents, 0);
  const isTax = (what: string): boolean => whats.get(what)?.taxPercent !== undefined;
  return {
    invoice: [...whats.keys()]
      .toSorted((a, b) => Number(isTax(a)) - Number(isTax(b)))
      .map((what) => ({
        what,
        isTax: isTax(what),
        own: amount(sides.own, what),
        ownWithPlod: amount(sides.ownWithPlod, what),
        plod: amount(sides.plod, what),
      })),
    total: { own: sides.own.total, ownWithPlod: sides.ownWithPlod.total, plod: sides.plod.total },
  };
}

/**
 * The invoice as rows of cells, headings first. Where the plod of a shift has not come there is a column more: our own record of the
 * shifts that have one, for nothing else can be compared with the plods.
 */
export function invoiceTable({ shifts, invoice, total }: Span): readonly (readonly string[])[] {
  const isWhole = shifts.every((each) => each.plods.length > 0);
  const row = (what: string, { own, ownWithPlod, plod }: InvoiceSides) => [
    what,
    formatCents(own),
    ...(isWhole ? [] : [formatCents(ownWithPlod)]),
    formatCents(plod),
    ownWithPlod === plod ? '' : formatCents(plod - ownWithPlod),
  ];
  return [
    ['invoice line', 'own record', ...(isWhole ? [] : ['of it with a plod']), 'plod', 'difference'],
    ...invoice.map((each) => row(each.what, each)),
    row('total', total),
  ];
}
