import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { formatMinutes, instantMs, localTime, minutesBetween, type Stamp } from '../quantity/stamp.ts';
import type { Document, Id, Thing } from '../record/document.ts';
import { type ActivitySaid, amendActivity, holeWords } from './commands.ts';
import { activityAt, type Span, spansOf } from './current.ts';
import { SHIFT_REFUSALS } from './findings.ts';
import type { EntryPart } from './record-line.ts';
import { type Activity, shiftHeaderOf, shiftThings } from './shift.ts';
import { readsAs } from './shift-clock.ts';
import { activityNamed, type ShiftRules } from './shift-rules.ts';

/**
 * Records an activity late, from one time, or between two: then what went on before goes on again, as entry of its own. With an
 * end and nothing before it, time from the end on is a gap. Refuses times outside the shift and over entries that are there.
 */
export function recordLate(
  shift: Document,
  rules: ShiftRules,
  input: ActivitySaid & { readonly from: Stamp; readonly to?: Stamp },
  maker: Maker,
): Result<Made> {
  const { from, to, ...activity } = input;
  const kind = activityNamed(rules, activity.activity);
  const again = resumedEntry(shift, from);
  const fault = hoursFault(shift, from) ?? overFault(shift, from, to, again);
  if (fault !== undefined) return refused(fault);
  if (kind === undefined)
    throw new Error(`no activity ${activity.activity}: the line was read against the list`);
  const entry: Activity = { startedAt: from, ...activity, charge: kind.charge };
  const resumed = to === undefined || again !== undefined ? undefined : resumedAt(shift, from, to);
  const ends = to !== undefined && resumed === undefined && nextAfter(shift, from)?.startedAt !== to;
  const until = to === undefined ? `from ${localTime(from)}` : `${localTime(from)}–${localTime(to)}`;
  if (again !== undefined) return ok(inPlaceOf(shift, again, entry, to, kind.label, maker));
  return ok({
    what: `${kind.label} ${until}${holeWords(activity)}${resumed === undefined ? '' : `, then ${resumed.activity} again`}`,
    changes: [
      { put: ['activities', maker.newId()], thing: (ends ? { ...entry, endedAt: to } : entry) as Thing },
      ...(resumed === undefined
        ? []
        : [{ put: ['activities', maker.newId()], thing: resumed as Thing } as const]),
    ],
  });
}

/**
 * An entry that starts at that time because what was before went on again after a late one: the history has it as the second of that edit, and
 * no one typed it. What is typed from its start takes its place.
 */
function resumedEntry(shift: Document, at: Stamp): Span | undefined {
  const entry = entryAt(shift, minuteOf(at));
  const isSecond = shift.history.some(({ changes }) => {
    const put = changes.flatMap((change) =>
      'put' in change && change.put[0] === 'activities' ? [change.put[1]] : [],
    );
    return put.length === 2 && put[1] === entry?.id;
  });
  return isSecond && entry?.used === undefined ? entry : undefined;
}

/** What was typed in place of an entry that went on again: that one starts when this ends, and goes where it would have no time. */
function inPlaceOf(
  shift: Document,
  again: Span,
  entry: Activity,
  to: Stamp | undefined,
  label: string,
  maker: Maker,
): Made {
  const next = nextAfter(shift, again.startedAt);
  const isWhole = to === undefined || (next !== undefined && instantMs(to) >= instantMs(next.startedAt));
  const until =
    to === undefined
      ? `from ${localTime(entry.startedAt)}`
      : `${localTime(entry.startedAt)}–${localTime(to)}`;
  return {
    what: `${label} ${until}${holeWords(entry)}, ${isWhole ? 'in place of' : 'then'} ${again.activity}${isWhole ? ' going on again' : ' again'}`,
    changes: [
      isWhole
        ? { remove: ['activities', again.id] }
        : { patch: ['activities', again.id], set: { startedAt: to } },
      { put: ['activities', maker.newId()], thing: entry as Thing },
    ],
  };
}

/** What went on before an entry that is put in, starting again at its end; nothing where the next entry starts there or none was before. */
function resumedAt(shift: Document, from: Stamp, to: Stamp): Activity | undefined {
  const before = activityAt(ordered(shift), from);
  if (before === undefined || nextAfter(shift, from)?.startedAt === to) return undefined;
  const { used: _used, ...same } = stored(shift, before.id);
  return { ...same, startedAt: to };
}

/** Two entries of one: the second starts at that time and says the same, to be amended by itself. */
export function splitEntry(shift: Document, at: Stamp, maker: Maker): Result<Made> {
  const span = activityAt(ordered(shift), at);
  if (span === undefined || readsAs(span.startedAt, minuteOf(at))) return refused(noEntry(shift, at));
  const { used: _used, ...same } = stored(shift, span.id);
  return ok({
    what: `${span.activity} split at ${localTime(at)}`,
    changes: [{ put: ['activities', maker.newId()], thing: { ...same, startedAt: at } as Thing }],
  });
}

/** Takes an entry out; its time goes to the entry before it. */
export function removeEntry(shift: Document, minute: number): Result<Made> {
  const entry = entryAt(shift, minute);
  if (entry === undefined) return refused(noEntryAt(shift, minute));
  return ok({
    what: `entry ${entry.activity} at ${localTime(entry.startedAt)} taken out`,
    changes: [{ remove: ['activities', entry.id] }],
  });
}

/** Amends the entry that starts at that time of day. A new start stays between its neighbours. */
export function amendEntry(
  shift: Document,
  rules: ShiftRules,
  minute: number,
  set: Partial<ActivitySaid> & { readonly startedAt?: Stamp; readonly endedAt?: Stamp },
  without: readonly EntryPart[] = [],
): Result<Made> {
  const entry = entryAt(shift, minute);
  if (entry === undefined) return refused(noEntryAt(shift, minute));
  const { startedAt = entry.startedAt, endedAt } = set;
  const fault =
    (set.startedAt === undefined ? undefined : moveFault(shift, entry, startedAt, endedAt)) ??
    (endedAt === undefined ? undefined : endFault(shift, entry, startedAt, endedAt));
  if (fault !== undefined) return refused(fault);
  return amendActivity(shift, rules, entry.id, changed(entry, set), without);
}

/** Only what is not so already: an entry opened and entered again changes nothing. */
function changed<T extends object>(entry: Span, set: T): T {
  const there = entry as unknown as Readonly<Record<string, unknown>>;
  const same = (key: string, value: unknown): boolean =>
    there[key] === value || (key === 'startedAt' && localTime(value as Stamp) === localTime(entry.startedAt));
  return Object.fromEntries(Object.entries(set).filter(([key, value]) => !same(key, value))) as T;
}

/** The entry that starts at that time of day. */
export function entryAt(shift: Document, minute: number): Span | undefined {
  return ordered(shift).findLast((span) => readsAs(span.startedAt, minute));
}

const minuteOf = (at: Stamp): number => Number(at.slice(11, 13)) * 60 + Number(at.slice(14, 16));

/** Spans of the shift as if it went on for a day: entries are found by their own order. */
function ordered(shift: Document): readonly Span[] {
  const { startsAt, endedAt } = shiftHeaderOf(shift);
  const latest = shiftThings(shift, 'activities')
    .map(([, each]) => each.startedAt)
    .reduce((a, b) => (instantMs(b) > instantMs(a) ? b : a), startsAt);
  return spansOf(shift, endedAt ?? (dayAfter(latest) as Stamp));
}

/** A time long after the last entry, so that it counts as going on. */
const dayAfter = (at: Stamp): string =>
  `${new Date(Date.parse(`${at.slice(0, 10)}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10)}${at.slice(10)}`;

const nextAfter = (shift: Document, at: Stamp): Span | undefined =>
  ordered(shift).find((span) => instantMs(span.startedAt) > instantMs(at));

function stored(shift: Document, id: Id): Activity {
  const found = shiftThings(shift, 'activities').find(([each]) => each === id);
  if (found === undefined) throw new Error(`no activity ${id}`);
  return found[1];
}

function hoursFault(shift: Document, at: Stamp): Finding | undefined {
  const { startsAt, endedAt } = shiftHeaderOf(shift);
  if (instantMs(at) + 60_000 <= instantMs(startsAt))
    return timeWrong(
      shift,
      `${localTime(at)} is before the shift began at ${localTime(startsAt)}`,
      `Type begin ${localTime(at)} first, if it began then.`,
    );
  if (endedAt === undefined || instantMs(at) < instantMs(endedAt)) return undefined;
  return timeWrong(
    shift,
    `${localTime(at)} is after the shift ended at ${localTime(endedAt)}`,
    'Give the time again, or amend the end first: end 18:30.',
  );
}

function overFault(shift: Document, from: Stamp, to: Stamp | undefined, again?: Span): Finding | undefined {
  if (to !== undefined && instantMs(to) <= instantMs(from))
    return timeWrong(
      shift,
      `${localTime(to)} is not after ${localTime(from)}`,
      'Give the time it started, then the time it ended.',
    );
  const over = ordered(shift).find(
    (span) =>
      (readsAs(span.startedAt, minuteOf(from)) && span.id !== again?.id) ||
      (to !== undefined &&
        instantMs(span.startedAt) > instantMs(from) &&
        instantMs(span.startedAt) < instantMs(to)),
  );
  if (over === undefined) return undefined;
  const clock = localTime(over.startedAt);
  return timeWrong(
    shift,
    `${over.activity} starts at ${clock} already`,
    `Amend that entry (${clock} and what it was) or take it out (remove ${clock}).`,
  );
}

function moveFault(shift: Document, entry: Span, to: Stamp, endedAt: Stamp | undefined): Finding | undefined {
  const spans = ordered(shift);
  const index = spans.findIndex((span) => span.id === entry.id);
  const [before, after] = [spans[index - 1], spans[index + 1]];
  const end = endedAt ?? entry.endedAt ?? after?.startedAt;
  if (before !== undefined && instantMs(to) <= instantMs(before.startedAt))
    return timeWrong(
      shift,
      `${localTime(to)} is not after ${before.activity} at ${localTime(before.startedAt)}`,
      'Move or take out that entry first.',
    );
  if (end !== undefined && instantMs(to) >= instantMs(end))
    return timeWrong(
      shift,
      `${localTime(to)} is not before its end at ${localTime(end)}`,
      'Move or take out the entry after it first.',
    );
  return hoursFault(shift, to);
}

function endFault(shift: Document, entry: Span, from: Stamp, to: Stamp): Finding | undefined {
  const next = nextAfter(shift, entry.startedAt);
  if (instantMs(to) <= instantMs(from)) return overFault(shift, from, to);
  if (next === undefined || instantMs(to) <= instantMs(next.startedAt)) return undefined;
  return timeWrong(
    shift,
    `${localTime(to)} is after ${next.activity} started at ${localTime(next.startedAt)}`,
    'Move or take out that entry first.',
  );
}

/** A time that can't be in this shift, with the way out. */
export function timeWrong(shift: Document, problem: string, remedy: string): Finding {
  return SHIFT_REFUSALS.timeWrong.at({ thing: `shift ${shift.id}` }, { problem, remedy });
}

const noEntry = (shift: Document, at: Stamp): Finding => noEntryAt(shift, minuteOf(at));

function noEntryAt(shift: Document, minute: number): Finding {
  const there = ordered(shift).map((span) => localTime(span.startedAt));
  return timeWrong(
    shift,
    `no entry starts at ${formatMinutes(minute).padStart(5, '0')}`,
    there.length === 0 ? 'None is recorded yet.' : `Entries start at ${there.join(', ')}.`,
  );
}

/** Ends the shift at a time that is given: now, or one that has passed. An end that was recorded is amended. */
export function endShiftAt(shift: Document, endedAt: Stamp): Result<Made> {
  const { startsAt } = shiftHeaderOf(shift);
  const last = shiftThings(shift, 'activities')
    .map(([, each]) => each.startedAt)
    .reduce((a, b) => (instantMs(b) > instantMs(a) ? b : a), startsAt);
  if (instantMs(endedAt) < instantMs(last))
    return refused(
      timeWrong(
        shift,
        `${localTime(endedAt)} is before ${localTime(last)}, when the last entry started`,
        `Give a later time, or take that entry out first: remove ${localTime(last)}.`,
      ),
    );
  return ok({
    what: `shift ended at ${localTime(endedAt)} after ${formatMinutes(minutesBetween(startsAt, endedAt))}`,
    changes: [{ patch: ['shift', 'shift'], set: { endedAt } }],
  });
}

/** Takes out a bit or a water strike that was recorded at that time of day. */
export function removeEvent(shift: Document, of: 'bit' | 'water', minute: number): Result<Made> {
  const table = of === 'bit' ? 'bits' : 'waterStrikes';
  const all = shiftThings(shift, table);
  const found = all.findLast(([, { at }]) => readsAs(at, minute));
  if (found !== undefined)
    return ok({
      what: `${of} at ${localTime(found[1].at)} taken out`,
      changes: [{ remove: [table, found[0]] }],
    });
  const there = all.map(([, { at }]) => localTime(at)).join(', ');
  return refused(
    timeWrong(
      shift,
      `no ${of} is recorded at ${formatMinutes(minute).padStart(5, '0')}`,
      there === '' ? 'None is recorded in this shift.' : `There is ${there}.`,
    ),
  );
}

/** The shift goes on until a time that was agreed: overtime. Refused before its last entry. */
export function agreeEnd(shift: Document, plannedEndAt: Stamp): Result<Made> {
  const { endedAt } = shiftHeaderOf(shift);
  if (endedAt !== undefined)
    return refused(
      timeWrong(
        shift,
        `the shift ended at ${localTime(endedAt)}`,
        `Amend the end instead: end ${localTime(plannedEndAt)}.`,
      ),
    );
  const made = endShiftAt(shift, plannedEndAt);
  return made.ok
    ? ok({
        what: `shift goes on until ${localTime(plannedEndAt)}`,
        changes: [{ patch: ['shift', 'shift'], set: { plannedEndAt } }],
      })
    : made;
}

/** Amends when the shift began. Refused past its first entry, whose time would be lost. */
export function beginShiftAt(shift: Document, startsAt: Stamp): Result<Made> {
  const first = ordered(shift)[0];
  if (first !== undefined && instantMs(startsAt) > instantMs(first.startedAt) + 59_999)
    return refused(
      timeWrong(
        shift,
        `${localTime(startsAt)} is after ${first.activity} started at ${localTime(first.startedAt)}`,
        'Move or take out that entry first.',
      ),
    );
  return ok({
    what: `shift began at ${localTime(startsAt)}`,
    changes: [{ patch: ['shift', 'shift'], set: { startsAt } }],
  });
}
