import { formatMinutes, instantMs, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import type { ChargeClass } from './charge-class.ts';
import { type Span, spansOf } from './current.ts';
import { shiftThings } from './shift.ts';
import { activityNamed, type ShiftRules } from './shift-rules.ts';

const clocks = ({ startedAt, until }: Span): string => `${localTime(startedAt)}–${localTime(until)}`;

const labelOf = (rules: ShiftRules, code: string): string =>
  activityNamed(rules, code)?.label.toLowerCase() ?? code;

/** What the record has between two instants, by the clock: `move 10:00–10:40, drilling 10:40–12:00`; `nothing` where it has none. */
export function recordBetween(spans: readonly Span[], rules: ShiftRules, from: Stamp, to: Stamp): string {
  const met = spans.filter(
    (span) => instantMs(span.startedAt) < instantMs(to) && instantMs(span.until) > instantMs(from),
  );
  return met.length === 0
    ? 'nothing'
    : met.map((span) => `${labelOf(rules, span.activity)} ${clocks(span)}`).join(', ');
}

/**
 * Which activities of a charge class make hours differ, where the sheet has hours and no times: when the record has each, and on which lines of the
 * sheet it is. Empty where every line has times: those are compared by the clock.
 */
export function activitiesApart(charge: ChargeClass, shift: Document, rules: ShiftRules, now: Stamp): string {
  const lines = shiftThings(shift, 'plodLines').map(([, line], index) => ({ ...line, number: index + 1 }));
  if (lines.every(({ startsAt }) => startsAt !== undefined)) return '';
  const spans = spansOf(shift, now).filter((span) => span.charge === charge && span.minutes > 0);
  const claimed = lines.filter(({ activity }) => activityNamed(rules, activity)?.charge === charge);
  const total = (worked: readonly { readonly minutes: number }[]): number =>
    worked.reduce((sum, { minutes }) => sum + minutes, 0);
  return [...new Set([...spans, ...claimed].map(({ activity }) => activity))]
    .flatMap((activity) => {
      const ours = spans.filter((each) => each.activity === activity);
      const theirs = claimed.filter((each) => each.activity === activity);
      if (Math.abs(total(ours) - total(theirs)) <= rules.tolerances.minutes) return [];
      const when = ours.length === 0 ? 'not in the record' : `in the record ${ours.map(clocks).join(', ')}`;
      const where =
        theirs.length === 0
          ? 'not on the sheet'
          : `on the sheet ${formatMinutes(total(theirs))} h (line ${theirs.map(({ number }) => number).join(', ')})`;
      return [`${labelOf(rules, activity)} is ${when}, ${where}`];
    })
    .join('; ');
}
