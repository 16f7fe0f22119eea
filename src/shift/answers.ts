import type { Finding } from '../finding/finding.ts';
import { formatPlace } from '../finding/place.ts';
import { formatCents } from '../quantity/cents.ts';
import { localDate, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { hashJson } from '../record/hash.ts';
import type { Bill } from './bill.ts';
import { SHIFT_QUERIES } from './findings.ts';
import type { Reconciliation } from './reconcile.ts';
import { type QUERY_ANSWERS, type ShiftNoun, shiftThings } from './shift.ts';

export type Answer = (typeof QUERY_ANSWERS)[number];

/** What a query is known by from one look to the next: its code and what it is about. */
export function queryKey({ code, place }: Finding): string {
  return `${code} ${place.thing ?? formatPlace(place)}`;
}

/** What came of a query so far: the latest answer; undefined where no one gave one. */
export function answerTo(shift: Document, query: Finding): ShiftNoun<'queryAnswers'> | undefined {
  const key = queryKey(query);
  return shiftThings(shift, 'queryAnswers')
    .map(([, each]) => each)
    .findLast((each) => each.query === key);
}

/** Queries that are not agreed and not corrected. */
export function openQueries(shift: Document, queries: readonly Finding[]): readonly Finding[] {
  return queries.filter((query) => (answerTo(shift, query)?.answer ?? 'open') === 'open');
}

/** SHA-256 of what a signature stands for: every figure of both sides, and both bills line by line. */
export function sealOf({ comparisons, ownBill, plodBill }: Omit<Reconciliation, 'queries'>): string {
  return hashJson([comparisons, plain(ownBill), plain(plodBill)]);
}

const plain = ({ lines, total }: Bill) => ({
  lines: lines.map(({ what, cents }) => ({ what, cents })),
  total,
});

/** A finding for each signature whose figures have changed since, with both. */
export function changedSince(shift: Document, now: Omit<Reconciliation, 'queries'>): readonly Finding[] {
  const seal = sealOf(now);
  return shiftThings(shift, 'signOffs').flatMap(([, signed]) => {
    if (signed.seal === undefined || signed.seal === seal) return [];
    const then = `${figure(signed.ownCents)} by the record and ${figure(signed.plodCents)} by the plod`;
    const today = `${formatCents(now.ownBill.total)} and ${formatCents(now.plodBill.total)}`;
    return [
      SHIFT_QUERIES.changedSince.at(
        { file: `shifts/${shift.id}.json`, thing: `signature of ${signed.by}` },
        {
          problem: `signed ${dayAndTime(signed.at)} at ${then}; now it is ${today}`,
          remedy: 'The history of the shift and its holes says what changed. Sign again, or undo it.',
        },
      ),
    ];
  });
}

const figure = (amount: number | undefined): string =>
  amount === undefined ? 'nothing' : formatCents(amount);
const dayAndTime = (at: Stamp): string => `${localDate(at)} ${localTime(at)}`;
