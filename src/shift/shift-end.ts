import { instantMs, offsetMin, type Stamp, stamp } from '../quantity/stamp.ts';
import type { Document, Thing } from '../record/document.ts';
import { shiftHeaderOf, shiftThings } from './shift.ts';
import type { ShiftTimes } from './shift-rules.ts';

/** What tells when a shift ends that no one ended: every document of the project, the shifts of a day, the time now. */
export interface EndContext {
  readonly documents: Iterable<Document>;
  readonly shifts: readonly ShiftTimes[];
  readonly now: Stamp;
}

/** A shift whose name is no longer in project.json ends after so many minutes, as the longest usual shift does. */
const LONGEST_MIN = 12 * 60;

/**
 * The end that was agreed for a shift, else the one by the settings: the wall clock of its last entry, for a clock can be changed during a night. A shift begun
 * before its hour keeps its end; one begun past its end, as a call-out, ends where it began.
 */
export function plannedEnd(shift: Document, times: readonly ShiftTimes[], now: Stamp): Stamp {
  const header = shiftHeaderOf(shift);
  if (header.plannedEndAt !== undefined) return header.plannedEndAt;
  const began = instantMs(header.startsAt);
  const found = times.find((each) => each.name === header.name);
  if (found === undefined) return stamp(began + LONGEST_MIN * 60_000, offsetMin(header.startsAt));
  const offset = offsetMin(latestStamp(shift, found.toMin - found.fromMin, now));
  const midnight = Date.parse(`${header.date}T00:00:00Z`) - offset * 60_000;
  return stamp(Math.max(began, midnight + found.toMin * 60_000), offset);
}

/** The latest stamp that belongs to the shift: of an entry, or now while it may still go on. */
function latestStamp(shift: Document, lengthMin: number, now: Stamp): Stamp {
  const { startsAt } = shiftHeaderOf(shift);
  const within = instantMs(now) - instantMs(startsAt) <= (lengthMin + 120) * 60_000;
  return latest([
    startsAt,
    ...shiftThings(shift, 'activities').map(([, each]) => each.startedAt),
    ...(within ? [now] : []),
  ]);
}

/**
 * The end of a shift that was left open: its planned end, or its last entry where that is later, but no later than the start of the
 * rig's next shift. Undefined while it goes on, and where a person ended it before the next one started.
 */
export function presumedEnd(shift: Document, { documents, shifts, now }: EndContext): Stamp | undefined {
  const header = shiftHeaderOf(shift);
  const next = nextStart(shift, documents);
  if (header.endedAt !== undefined)
    return next !== undefined && instantMs(next) < instantMs(header.endedAt) ? next : undefined;
  const entries = shiftThings(shift, 'activities').map(([, each]) => each.startedAt);
  const own = latest([plannedEnd(shift, shifts, now), ...entries]);
  const end = next === undefined || instantMs(own) < instantMs(next) ? own : next;
  return instantMs(end) <= instantMs(now) ? end : undefined;
}

/** The shift with the end that is presumed, where one is: what every figure is computed from. Never stored. */
export function closed(shift: Document, context: EndContext): Document {
  const endedAt = presumedEnd(shift, context);
  if (endedAt === undefined) return shift;
  const header = { ...shiftHeaderOf(shift), endedAt } as Thing;
  return { ...shift, tables: { ...shift.tables, shift: { shift: header } } };
}

/** Shifts of a rig in the order in which they started. */
export function shiftsOf(documents: Iterable<Document>, rig: string): readonly Document[] {
  return [...documents]
    .filter((each) => each.kind === 'shift' && shiftHeaderOf(each).rig === rig)
    .sort((a, b) => startMs(a) - startMs(b) || (a.id < b.id ? -1 : 1));
}

/** The shift of a rig that an instant belongs to, with its presumed end; undefined where it belongs to none. */
export function shiftHolding(at: Stamp, rig: string, context: EndContext): Document | undefined {
  const ms = instantMs(at);
  const found = shiftsOf(context.documents, rig).findLast((each) => startMs(each) <= ms);
  if (found === undefined) return undefined;
  const { endedAt } = shiftHeaderOf(closed(found, context));
  return endedAt === undefined || ms < instantMs(endedAt) ? found : undefined;
}

const startMs = (shift: Document): number => instantMs(shiftHeaderOf(shift).startsAt);

function nextStart(shift: Document, documents: Iterable<Document>): Stamp | undefined {
  const all = shiftsOf(documents, shiftHeaderOf(shift).rig);
  const next = all[all.findIndex((each) => each.id === shift.id) + 1];
  return next === undefined || next.id === shift.id ? undefined : shiftHeaderOf(next).startsAt;
}

function latest(stamps: readonly Stamp[]): Stamp {
  return stamps.reduce((a, b) => (instantMs(b) > instantMs(a) ? b : a));
}

/** The start of a shift by the settings on the date that it carries, on the clock of `now`. */
export function plannedStart(date: string, times: ShiftTimes, now: Stamp): Stamp {
  const offset = offsetMin(now);
  return stamp(Date.parse(`${date}T00:00:00Z`) + (times.fromMin - offset) * 60_000, offset);
}
