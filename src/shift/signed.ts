import type { Finding } from '../finding/finding.ts';
import { formatCents } from '../quantity/cents.ts';
import { formatMinutes, instantMs, localDate, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document, Id } from '../record/document.ts';
import { hashJson } from '../record/hash.ts';
import type { Bill } from './bill.ts';
import { SHIFT_QUERIES } from './findings.ts';
import { type Comparison, figureText, type Reconciliation, subjectText } from './reconcile.ts';
import { type SignOff, shiftHeaderOf, shiftThings } from './shift.ts';

type Figures = Omit<Reconciliation, 'queries'>;

/** Signatures on a plod, the oldest first. */
export function signaturesOn(shift: Document, plod: Id): readonly SignOff[] {
  return shiftThings(shift, 'signOffs')
    .map(([, each]) => each)
    .filter((each) => each.plod === plod);
}

/** Plods of a shift that no one has signed for our side: the driller's own signature says only that the sheet is the driller's. */
export function unsignedPlods(shift: Document): readonly string[] {
  return shiftThings(shift, 'plods').flatMap(([id, { sheet }]) =>
    signaturesOn(shift, id).some(isOurs) ? [] : [sheet],
  );
}

/** Plods whose latest signature of our side left queries open, and how many. */
export function signedWithOpen(
  shift: Document,
): readonly { readonly sheet: string; readonly open: number }[] {
  return shiftThings(shift, 'plods').flatMap(([id, { sheet }]) => {
    const open = signaturesOn(shift, id).findLast(isOurs)?.openQueries ?? 0;
    return open === 0 ? [] : [{ sheet, open }];
  });
}

/** True for a signature of our side. */
export const isOurs = ({ role }: SignOff): boolean => role !== 'driller';

/** Who signed a plod, each person once, the driller named as one. */
export function signersOf(shift: Document, plod: Id): readonly string[] {
  return [
    ...new Set(
      signaturesOn(shift, plod).map((each) => (isOurs(each) ? each.by : `${each.by} for the driller`)),
    ),
  ];
}

/**
 * Both sides of a shift by the clock, a line each: its hours, the entries of the record, the lines of the plods. A change that leaves every
 * sum as it was, as two hours that swap, shows by these alone.
 */
export function timesOf(shift: Document): readonly string[] {
  const { startsAt, endedAt } = shiftHeaderOf(shift);
  const on = (hole: string | undefined): string => (hole === undefined ? '' : ` on ${hole}`);
  const end = endedAt === undefined ? '' : `–${localTime(endedAt)}`;
  const entries = shiftThings(shift, 'activities')
    .map(([, each]) => each)
    .toSorted((a, b) => instantMs(a.startedAt) - instantMs(b.startedAt))
    .map(({ startedAt, endedAt: until, activity, hole, authorisedBy }) => {
      const by = authorisedBy === undefined ? '' : ` by ${authorisedBy}`;
      return `record ${localTime(startedAt)}${until === undefined ? '' : `–${localTime(until)}`} ${activity}${on(hole)}${by}`;
    });
  const lines = shiftThings(shift, 'plodLines').map(([, line]) => {
    const { startsAt: from, endsAt: to, minutes, activity, hole } = line;
    const clocks =
      from === undefined || to === undefined
        ? `${formatMinutes(minutes)} h`
        : `${localTime(from)}–${localTime(to)}`;
    return `plod ${clocks} ${activity}${on(hole)}`;
  });
  return [`shift ${localTime(startsAt)}${end}`, ...entries, ...lines];
}

/** SHA-256 of what a signature stands for: every time and every figure of both sides, and both bills line by line. */
export function sealOf({ comparisons, ownBill, plodBill }: Figures, times?: readonly string[]): string {
  const figures = comparisons
    .filter(({ subject }) => subject !== 'beside')
    .map(({ subject, of, own, plod, difference, past }) => ({ subject, of, own, plod, difference, past }));
  return hashJson([figures, plain(ownBill), plain(plodBill), ...(times === undefined ? [] : [times])]);
}

const plain = ({ lines, total }: Bill) => ({
  lines: lines.map(({ what, cents }) => ({ what, cents })),
  total,
});

/** The figures that are signed, those of nothing left out. */
export function figuresOf({ comparisons }: Figures): NonNullable<SignOff['figures']> {
  return comparisons
    .filter(({ own, plod }) => own !== 0 || plod !== 0)
    .map(({ subject, of, own, plod }) => ({ subject, of, own, plod }));
}

/** True where a signature is for other figures, or other times, than there are now. */
export function isChanged(signed: SignOff, now: Figures, times: readonly string[]): boolean {
  if (signed.figures !== undefined) return changesSince(signed, now, times).length > 0;
  return signed.seal !== undefined && signed.seal !== sealOf(now);
}

/** What changed since a plod was signed, with both figures: for the latest signature on it, as it counts. */
export function changedSince(shift: Document, now: Figures): readonly Finding[] {
  const times = timesOf(shift);
  return shiftThings(shift, 'plods').flatMap(([id, { sheet }]) => {
    const signed = signaturesOn(shift, id).at(-1);
    if (signed === undefined || !isChanged(signed, now, times)) return [];
    const totals = [signed.ownCents, signed.plodCents].map(amount);
    const today = [now.ownBill.total, now.plodBill.total].map(amount);
    const then = `${totals[0]} by the record and ${totals[1]} by the plod`;
    const total = totals.join() === today.join() ? '' : `; now it is ${today.join(' and ')}`;
    const changes = changesSince(signed, now, times);
    const what = changes.length === 0 ? '' : `. Changed since: ${changes.join('; ')}`;
    return [
      SHIFT_QUERIES.changedSince.at(
        { file: `shifts/${shift.id}.json`, thing: `signature on ${sheet}` },
        {
          problem: `${sheet} signed by ${signed.by} ${dayAndTime(signed.at)} at ${then}${total}${what}`,
          remedy: 'The history of the shift and its holes says who changed it. Sign again, or undo it.',
        },
      ),
    ];
  });
}

/**
 * Each figure that is another one now, in words; money only where nothing else changed, for it follows from the rest. Then the times that
 * were there and are not, and those that are and were not, where the signature has them.
 */
function changesSince(
  { figures, times: signed }: SignOff,
  now: Figures,
  times: readonly string[],
): readonly string[] {
  if (figures === undefined) return [];
  const [gone, come] = signed === undefined ? [[], []] : [without(signed, times), without(times, signed)];
  const key = ({ subject, of }: { readonly subject: string; readonly of: string }) => `${subject} ${of}`;
  const today = figuresOf(now);
  const [before, after] = [figures, today].map((all) => new Map(all.map((each) => [key(each), each])));
  const all = new Map([...figures, ...today].map((each) => [key(each), each]));
  const changed = [...all].flatMap(([at, each]) => {
    const subject = each.subject as Comparison['subject'];
    const side = (name: 'own' | 'plod', words: string): readonly string[] => {
      const [was, is] = [before?.get(at)?.[name] ?? 0, after?.get(at)?.[name] ?? 0];
      return was === is
        ? []
        : [
            `${subjectText(subject, each.of)}, ${words} ${figureText(subject, was)} then, ${figureText(subject, is)} now`,
          ];
    };
    return [...side('own', 'record'), ...side('plod', 'plod')].map((words) => ({ subject, words }));
  });
  const apart = changed.filter(({ subject }) => subject !== 'money');
  return [
    ...(apart.length > 0 ? apart : changed).map(({ words }) => words),
    ...gone.map((each) => `${each} then`),
    ...come.map((each) => `${each} now`),
  ];
}

/** Lines that the others lack, each as often as it is there. */
function without(lines: readonly string[], others: readonly string[]): readonly string[] {
  const left = [...others];
  return lines.filter((each) => {
    const index = left.indexOf(each);
    if (index >= 0) left.splice(index, 1);
    return index < 0;
  });
}

const amount = (figure: number | undefined): string =>
  figure === undefined ? 'nothing' : formatCents(figure);
const dayAndTime = (at: Stamp): string => `${localDate(at)} ${localTime(at)}`;
