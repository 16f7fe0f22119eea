import type { Finding, FindingKind } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import { formatCents } from '../quantity/cents.ts';
import { formatDepth } from '../quantity/depth.ts';
import { lengthMm } from '../quantity/interval.ts';
import { formatMinutes } from '../quantity/stamp.ts';
import { type Bill, billOf, isDerived, type LineFrom, wetByHole } from './bill.ts';
import { CHARGE_CLASSES } from './charge-class.ts';
import { minutesByClass } from './current.ts';
import { SHIFT_QUERIES } from './findings.ts';
import type { HoleFacts } from './hole-facts.ts';
import { itemAmong } from './item-name.ts';
import { type ShiftRecord, sumBy, type Work } from './shift-record.ts';
import type { Contract, ShiftRules } from './shift-rules.ts';

/** One figure of the two records side by side. Minutes, millimetres, pieces or cents, as its subject says. */
export interface Comparison {
  readonly subject: 'hours' | 'beside' | 'metres' | 'wet' | 'shots' | 'consumables' | 'money';
  /** Charge class, what ran beside the work, hole, item or line of the bill. */
  readonly of: string;
  readonly own: number;
  readonly plod: number;
  /** Plod less own: positive where the plod claims more. */
  readonly difference: number;
  readonly past: boolean;
  /** True where it follows from another difference past tolerance, which is the one to settle. */
  readonly follows?: boolean;
}

/** A plod compared with our own record. */
export interface Reconciliation {
  readonly comparisons: readonly Comparison[];
  readonly ownBill: Bill;
  readonly plodBill: Bill;
  /** A finding for each difference past its tolerance. */
  readonly queries: readonly Finding[];
}

/**
 * Holds what the plods of a shift claim against our own record: hours by class, metres by hole, shots, consumables, then money by
 * line of the bill. Wet metres are compared where the sheets call any wet, else they are our own on both bills, as finished holes are. `before` is what
 * the rig did in its shift before, by our record.
 */
export function reconcile(
  ownAsWritten: ShiftRecord,
  plodAsWritten: ShiftRecord,
  rules: ShiftRules,
  facts: ReadonlyMap<string, HoleFacts>,
  place: Place,
  before: readonly Work[] = [],
): Reconciliation {
  const { tolerances, contract } = rules;
  const names = [
    ...(contract.consumables ?? []).map((each) => each.item),
    ...ownAsWritten.consumables.keys(),
    ...plodAsWritten.consumables.keys(),
  ];
  const own = underNames(ownAsWritten, names);
  const plod = underNames(plodAsWritten, names);
  const ownBill = billOf(own, contract, facts, before);
  const plodBill = billOf(plod, contract, facts, before);
  const compared = [
    ...compare('hours', hours(own), hours(plod), tolerances.minutes),
    ...compare('beside', besides(own, contract), besides(plod, contract), tolerances.minutes),
    ...compare('metres', metresByHole(own), metresByHole(plod), tolerances.metresMm),
    ...(plod.wet === undefined
      ? []
      : compare('wet', wetByHole(own, facts), wetByHole(plod, facts), tolerances.metresMm)),
    ...compare('shots', own.shots, plod.shots, tolerances.shots),
    ...compare('consumables', own.consumables, plod.consumables, tolerances.consumables),
    ...compare('money', billByLine(ownBill), billByLine(plodBill), tolerances.cents),
  ];
  const lines = [...ownBill.lines, ...plodBill.lines];
  const comparisons = compared.map((each) => {
    const from = each.subject === 'money' ? lines.find(({ what }) => what === each.of)?.from : undefined;
    return each.past && from !== undefined && isExplained(from, compared) ? { ...each, follows: true } : each;
  });
  const queries = comparisons
    .filter((each) => each.past && each.follows !== true)
    .map((each) => query(each, place));
  return { comparisons, ownBill, plodBill, queries };
}

/** True where what a line of the bill is made from is past tolerance itself: the line follows once that is settled. */
function isExplained({ subject, of }: LineFrom, compared: readonly Comparison[]): boolean {
  const past = compared.filter((each) => each.past);
  if (subject === 'bill') return past.some((each) => each.subject !== 'money' || !isDerived(each.of));
  // Wet metres are metres too: those that were not drilled are neither.
  const subjects = subject === 'wet' ? ['wet', 'metres'] : [subject];
  return past.some((each) => subjects.includes(each.subject) && (of === undefined || each.of === of));
}

/** The record with each consumable under one name, whichever way it was written. */
function underNames(record: ShiftRecord, names: readonly string[]): ShiftRecord {
  const consumables = sumBy(
    [...record.consumables],
    ([item]) => itemAmong(names, item),
    ([, count]) => count,
  );
  return { ...record, consumables };
}

function hours(record: ShiftRecord): ReadonlyMap<string, number> {
  const minutes = minutesByClass(record.work);
  return new Map(CHARGE_CLASSES.map((charge) => [charge, minutes[charge]]));
}

/** Minutes by what ran beside the work, under the names of the contract. */
function besides(record: ShiftRecord, { concurrent = [] }: Contract): ReadonlyMap<string, number> {
  const names = [...concurrent.map(({ item }) => item), ...record.work.flatMap(({ beside = [] }) => beside)];
  return sumBy(
    record.work.flatMap(({ beside = [], minutes }) =>
      [...new Set(beside.map((item) => itemAmong(names, item)))].map((item) => ({ item, minutes })),
    ),
    ({ item }) => item,
    ({ minutes }) => minutes,
  );
}

function metresByHole(record: ShiftRecord): ReadonlyMap<string, number> {
  return sumBy(record.metres, (each) => each.hole, lengthMm);
}

function billByLine(bill: Bill): ReadonlyMap<string, number> {
  return sumBy(
    bill.lines,
    (line) => line.what,
    (line) => line.cents,
  );
}

/** Every key of either side with both figures; missing on one side counts as 0. */
function compare(
  subject: Comparison['subject'],
  own: ReadonlyMap<string, number>,
  plod: ReadonlyMap<string, number>,
  tolerance: number,
): readonly Comparison[] {
  return [...new Set([...own.keys(), ...plod.keys()])].map((of) => {
    const [ours, theirs] = [own.get(of) ?? 0, plod.get(of) ?? 0];
    const difference = theirs - ours;
    return { subject, of, own: ours, plod: theirs, difference, past: Math.abs(difference) > tolerance };
  });
}

const KINDS: Readonly<Record<Comparison['subject'], FindingKind>> = {
  hours: SHIFT_QUERIES.hours,
  beside: SHIFT_QUERIES.hours,
  metres: SHIFT_QUERIES.metres,
  wet: SHIFT_QUERIES.metres,
  shots: SHIFT_QUERIES.shots,
  consumables: SHIFT_QUERIES.consumables,
  money: SHIFT_QUERIES.money,
};

const REMEDIES: Readonly<Record<Comparison['subject'], string>> = {
  hours: 'Go through the times with the driller before signing.',
  beside: 'Ask from when to when it ran.',
  metres: 'Ask the driller to count the rods before you sign.',
  wet: 'Ask the driller where the water came in. Compare with the bags of those metres.',
  shots: 'Compare with the shots in the log of the survey tool.',
  consumables: 'Ask what was used, and where the rest is.',
  money: 'Hours, metres and pieces are within tolerance: go through this line with the driller.',
};

/** A figure of a comparison in its own unit: `1:30`, `6 m`, `2`, `1,234.50`. */
export function figureText(subject: Comparison['subject'], figure: number): string {
  if (subject === 'hours' || subject === 'beside') return `${formatMinutes(figure)} h`;
  if (subject === 'metres' || subject === 'wet') return `${formatDepth(figure)} m`;
  return subject === 'money' ? formatCents(figure) : String(figure);
}

const SUBJECTS: Readonly<Record<Comparison['subject'], (of: string) => string>> = {
  hours: (of) => (of === 'no charge' ? 'hours without charge' : `hours charged as ${of}`),
  beside: (of) => `hours of ${of}`,
  metres: (of) => `metres of ${of}`,
  wet: (of) => `wet metres of ${of}`,
  shots: (of) => `shots in ${of}`,
  consumables: (of) => of,
  money: (of) => `bill, ${of}`,
};

/** What is compared, in words that are read out: `metres of KP002`. */
export const subjectText = (subject: Comparison['subject'], of: string): string => SUBJECTS[subject](of);

/** What a query is called by, where that is not its subject. */
const THINGS: Partial<Record<Comparison['subject'], string>> = {
  beside: 'hours',
  consumables: 'used',
  money: 'bill',
};

function query(comparison: Comparison, place: Place): Finding {
  const { subject, of, own, plod, difference } = comparison;
  const more = figureText(subject, Math.abs(difference));
  return KINDS[subject].at(
    { ...place, thing: `${THINGS[subject] ?? subject}, ${of}` },
    {
      problem: `${SUBJECTS[subject](of)}: the sheet has ${figureText(subject, plod)}, the record ${figureText(subject, own)}: ${more} ${difference > 0 ? 'more' : 'less'}`,
      remedy: REMEDIES[subject],
    },
  );
}
