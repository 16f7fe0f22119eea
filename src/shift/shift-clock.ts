import { instantMs, localTime, offsetMin, type Stamp, stamp } from '../quantity/stamp.ts';

const DAY_MS = 86_400_000;

/** How far a typed time may be ahead of the clock: two watches on a rig differ by minutes. */
export const AHEAD_MS = 5 * 60_000;

/** Minutes of the day of `14:20`, `9:05` or `1420`; undefined where the text is not a time of day. */
export function minuteOfClock(text: string): number | undefined {
  const [, hours, minutes] = /^(\d{1,2}):(\d{2})$/.exec(text) ?? /^(\d{2})(\d{2})$/.exec(text) ?? [];
  const [hour, minute] = [Number(hours), Number(minutes)];
  return hours === undefined || hour > 23 || minute > 59 ? undefined : hour * 60 + minute;
}

/**
 * The latest instant at or before now at which the clock said so; a few minutes ahead of now counts as now does. `stamps` are others
 * of the shift: up to the last one on another offset, as before a change of the clock, that offset is read.
 */
export function latestAt(minute: number, now: Stamp, stamps: readonly Stamp[] = []): Stamp {
  const onClock = (offset: number): Stamp => {
    const at = onDayOf(instantMs(now) + AHEAD_MS, minute, offset);
    return stamp(at > instantMs(now) + AHEAD_MS ? at - DAY_MS : at, offset);
  };
  const plain = onClock(offsetMin(now));
  const before = stamps
    .toSorted((a, b) => instantMs(a) - instantMs(b))
    .findLast((each) => instantMs(each) <= instantMs(plain));
  return before === undefined || offsetMin(before) === offsetMin(now) ? plain : onClock(offsetMin(before));
}

/**
 * The first instant from `from` on at which the clock said so. `stamps` are others of the same shift: from the first one on
 * another offset, as after a change of the clock, that offset is read. Over such a change a stamp that reads as
 * that time of day is it: nothing else tells the hour that comes twice.
 */
export function firstFrom(minute: number, from: Stamp, stamps: readonly Stamp[]): Stamp {
  const onClock = (offset: number): Stamp => {
    const at = onDayOf(instantMs(from), minute, offset);
    return stamp(at < instantMs(from) ? at + DAY_MS : at, offset);
  };
  const plain = onClock(offsetMin(from));
  const isChanged = stamps.some((each) => offsetMin(each) !== offsetMin(from));
  const known = stamps
    .filter((each) => isWithinDay(from, each) && readsAs(each, minute))
    .toSorted((a, b) => instantMs(a) - instantMs(b))[0];
  if (isChanged && known !== undefined)
    return stamp(Math.floor(instantMs(known) / 60_000) * 60_000, offsetMin(known));
  const before = [from, ...stamps]
    .toSorted((a, b) => instantMs(a) - instantMs(b))
    .findLast((each) => instantMs(each) <= instantMs(plain));
  return before === undefined || offsetMin(before) === offsetMin(from) ? plain : onClock(offsetMin(before));
}

const isWithinDay = (from: Stamp, at: Stamp): boolean =>
  instantMs(at) >= instantMs(from) && instantMs(at) < instantMs(from) + DAY_MS;

/** How far local time was ahead at an instant of a shift, by the latest of its stamps until then, else by the first of them. */
export function offsetsOf(stamps: readonly Stamp[]): (ms: number) => number {
  const ordered = stamps.toSorted((a, b) => instantMs(a) - instantMs(b));
  return (ms) => {
    const found = ordered.findLast((each) => instantMs(each) <= ms) ?? ordered[0];
    return found === undefined ? 0 : offsetMin(found);
  };
}

/** The instant of a time of day on the local day that an instant falls on. */
function onDayOf(ms: number, minute: number, offset: number): number {
  const local = ms + offset * 60_000;
  return Math.floor(local / DAY_MS) * DAY_MS + (minute - offset) * 60_000;
}

/** True where a stamp reads as that minute of the day. */
export const readsAs = (at: Stamp, minute: number): boolean => minuteOfClock(localTime(at)) === minute;
