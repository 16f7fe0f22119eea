import { instantMs, type Stamp } from '../quantity/stamp.ts';
import type { Document, Id } from '../record/document.ts';
import { CHARGE_CLASSES, type ChargeClass } from './charge-class.ts';
import { type Activity, shiftHeaderOf, shiftThings } from './shift.ts';

/**
 * An activity with the time that it took. Minutes are counted between the full minutes of the clock, so that those of all
 * activities add up to those of the shift, whatever the seconds.
 */
export interface Span extends Activity {
  readonly id: Id;
  readonly minutes: number;
  /** When it ended, or now; cut to the shift. */
  readonly until: Stamp;
  /** True where it is still going on. */
  readonly current: boolean;
}

/** Whole minutes since 1970 at an instant: the seconds are cut. */
export const minuteOf = (at: Stamp): number => Math.floor(instantMs(at) / 60_000);

/**
 * The activities of a shift in order of their instants (those of one instant as they were made), each lasting to the start of
 * the next one unless it was ended before, the last one to the end of the shift or, while it goes on, to now. Nothing is counted
 * outside the shift. Order is by instants and never by wall clocks: a rig that crosses a time zone loses no minute.
 */
export function spansOf(shift: Document, now: Stamp): readonly Span[] {
  const header = shiftHeaderOf(shift);
  const first = minuteOf(header.startsAt);
  const end = header.endedAt ?? now;
  const last = Math.max(first, minuteOf(end));
  const inside = (minute: number): number => Math.min(last, Math.max(first, minute));
  const ordered = [...shiftThings(shift, 'activities')].sort(
    ([, a], [, b]) => instantMs(a.startedAt) - instantMs(b.startedAt),
  );
  return ordered.map(([id, activity], index): Span => {
    const next = ordered[index + 1]?.[1];
    const until = [activity.endedAt, next?.startedAt, end]
      .filter((each) => each !== undefined)
      .reduce(earlier);
    const from = inside(minuteOf(activity.startedAt));
    const current = next === undefined && activity.endedAt === undefined && header.endedAt === undefined;
    return { ...activity, id, until, minutes: Math.max(0, inside(minuteOf(until)) - from), current };
  });
}

const earlier = (a: Stamp, b: Stamp): Stamp => (instantMs(b) < instantMs(a) ? b : a);

/** Time of a shift that no activity was recorded for. */
export interface Gap {
  readonly from: Stamp;
  readonly to: Stamp;
  readonly minutes: number;
}

/** The gaps of a shift in order: before its first activity, between two, after the last. Their minutes and those of the spans make the shift. */
export function gapsOf(shift: Document, now: Stamp): readonly Gap[] {
  const { startsAt, endedAt } = shiftHeaderOf(shift);
  const end = endedAt ?? now;
  const gaps: Gap[] = [];
  let from = startsAt;
  const reach = (to: Stamp): void => {
    const minutes = minuteOf(earlier(to, end)) - minuteOf(from);
    if (minutes > 0) gaps.push({ from, to: earlier(to, end), minutes });
  };
  for (const span of spansOf(shift, now)) {
    reach(span.startedAt);
    if (instantMs(span.until) > instantMs(from)) from = span.until;
  }
  reach(end);
  return gaps;
}

/** The activity going on, with its minutes so far; undefined before the first one and once the shift has ended. */
export function currentActivity(shift: Document, now: Stamp): Span | undefined {
  return spansOf(shift, now).find((span) => span.current);
}

/** The activity that was going on at an instant of the shift, or undefined in a gap. */
export function activityAt(spans: readonly Span[], at: Stamp): Span | undefined {
  const ms = instantMs(at);
  const found = spans.findLast((span) => instantMs(span.startedAt) <= ms);
  return found?.endedAt !== undefined && instantMs(found.endedAt) <= ms ? undefined : found;
}

/** The activities that touch the minute of an instant, in their order. */
export function spansTouching(spans: readonly Span[], at: Stamp): readonly Span[] {
  return spans.filter(
    (span) => instantMs(span.startedAt) <= instantMs(at) && minuteOf(span.until) >= minuteOf(at),
  );
}

/**
 * The activity that a rod was drilled in. Times are typed to the minute and rods stamped to the second, so a rod stamped in the
 * minute in which an activity begins may be of the one before: of those that touch its minute the one paid by the metre, if any is.
 */
export function drilledIn(spans: readonly Span[], at: Stamp): Span | undefined {
  return spansTouching(spans, at).findLast((span) => span.charge === 'metres') ?? activityAt(spans, at);
}

/** Minutes of a shift so far: to its end, or to now while it goes on. */
export function shiftMinutes(shift: Document, now: Stamp): number {
  const header = shiftHeaderOf(shift);
  return Math.max(0, minuteOf(header.endedAt ?? now) - minuteOf(header.startsAt));
}

/** Minutes of a shift that no activity was recorded for. */
export function unrecordedMinutes(shift: Document, now: Stamp): number {
  return spansOf(shift, now).reduce((left, span) => left - span.minutes, shiftMinutes(shift, now));
}

/** Minutes by charge class, every class named. */
export type MinutesByClass = { readonly [charge in ChargeClass]: number };

/** Adds up minutes by charge class. */
export function minutesByClass(
  worked: readonly { readonly charge: ChargeClass; readonly minutes: number }[],
): MinutesByClass {
  const sum = (charge: ChargeClass): number =>
    worked.filter((each) => each.charge === charge).reduce((minutes, each) => minutes + each.minutes, 0);
  return Object.fromEntries(CHARGE_CLASSES.map((charge) => [charge, sum(charge)])) as MinutesByClass;
}
