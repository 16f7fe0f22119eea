/**
 * An instant with the offset of the clock it was stamped by, as ISO 8601 to the second: `2026-03-14T07:42:10+08:00`.
 * One text holds both, so a record made on either side of a time-zone border still says what the wall clock said.
 */
export type Stamp = string & { readonly form: 'instant and offset' };

const STAMP = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2}):(\d{2})([+-])(\d{2}):(\d{2})$/;

const two = (n: number): string => String(n).padStart(2, '0');

/** Minutes ahead of UTC that the parts of a stamp say. */
function offsetOf(parts: RegExpExecArray): number {
  return (parts[7] === '-' ? -1 : 1) * (Number(parts[8]) * 60 + Number(parts[9])) + 0;
}

/**
 * Stamp of an instant (milliseconds since 1970 UTC, cut to the second) on a clock `offsetMin` minutes ahead of UTC. Throws
 * RangeError for an instant outside the years 0 to 9999 of that clock, or an offset that no clock has.
 */
export function stamp(instantMs: number, offsetMin: number): Stamp {
  if (!Number.isFinite(instantMs))
    throw new RangeError(`instant must be finite milliseconds, got ${instantMs}`);
  if (!Number.isInteger(offsetMin) || Math.abs(offsetMin) > 14 * 60) {
    throw new RangeError(`offset must be whole minutes within 14 hours of UTC, got ${offsetMin}`);
  }
  const local = new Date(Math.floor(instantMs / 1000) * 1000 + offsetMin * 60_000);
  if (Number.isNaN(local.getTime()) || local.getUTCFullYear() < 0 || local.getUTCFullYear() > 9999)
    throw new RangeError(`instant must be in the years 0 to 9999, got ${instantMs}`);
  const ahead = Math.abs(offsetMin);
  return `${local.toISOString().slice(0, 19)}${offsetMin < 0 ? '-' : '+'}${two(Math.floor(ahead / 60))}:${two(ahead % 60)}` as Stamp;
}

/**
 * The text as a stamp, or undefined when it is none: wrong form, or no such date or time (30 February, 24:00). One instant on
 * one clock has one text, so `-00:00` and `Z` are not stamps.
 */
export function parseStamp(text: string): Stamp | undefined {
  const parts = STAMP.exec(text);
  if (!parts) return undefined;
  const offsetMin = offsetOf(parts);
  if (Number(parts[9]) > 59 || Math.abs(offsetMin) > 14 * 60) return undefined;
  const instant = Date.parse(text);
  if (Number.isNaN(instant)) return undefined;
  return stamp(instant, offsetMin) === text ? (text as Stamp) : undefined;
}

/** True for a day of the calendar, `2026-03-14`: 30 February and a month 13 are none. */
export function isDay(text: string): boolean {
  return parseStamp(`${text}T00:00:00+00:00`) !== undefined;
}

/** Milliseconds since 1970 UTC. */
export function instantMs(at: Stamp): number {
  return Date.parse(at);
}

/** Minutes that the stamping clock was ahead of UTC. */
export function offsetMin(at: Stamp): number {
  const parts = STAMP.exec(at);
  if (!parts) throw new RangeError(`not a stamp: ${at}`);
  return offsetOf(parts);
}

/** `2026-03-14`, by the wall clock that stamped it. */
export function localDate(at: Stamp): string {
  return at.slice(0, 10);
}

/** `07:42` (or `07:42:10` with seconds), by the wall clock that stamped it. */
export function localTime(at: Stamp, seconds = false): string {
  return at.slice(11, seconds ? 19 : 16);
}

/** Minutes from one stamp to another, rounded to the whole minute, negative when `to` is earlier. */
export function minutesBetween(from: Stamp, to: Stamp): number {
  return Math.round((instantMs(to) - instantMs(from)) / 60_000) + 0;
}

/** `0:42`, hours and minutes of a duration in minutes, cut to the minute; a negative one reads `0:00`. */
export function formatMinutes(minutes: number): string {
  const whole = Math.max(0, Math.floor(minutes));
  return `${Math.floor(whole / 60)}:${two(whole % 60)}`;
}
