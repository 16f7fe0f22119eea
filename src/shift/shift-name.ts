import { localDate, localTime, type Stamp } from '../quantity/stamp.ts';
import type { DocumentName } from '../record/document.ts';
import type { ShiftName } from './charge-class.ts';
import type { ShiftTimes } from './shift-rules.ts';

/** A shift of the calendar: the local date on which it starts, and its name. */
export interface ShiftOfDay {
  readonly date: string;
  readonly name: ShiftName;
}

/**
 * The shift that an instant belongs to, by the wall clock that stamped it: it holds its start, not its end, and a night shift
 * past midnight keeps the date on which it started. Undefined where no shift is worked at that time of day.
 */
export function shiftAt(shifts: readonly ShiftTimes[], at: Stamp): ShiftOfDay | undefined {
  const minute = Number(localTime(at).slice(0, 2)) * 60 + Number(localTime(at).slice(3, 5));
  for (const { name, fromMin, toMin } of shifts) {
    if (minute >= fromMin && minute < toMin) return { date: localDate(at), name };
    if (minute + 1440 < toMin) return { date: dayBefore(localDate(at)), name };
  }
  return undefined;
}

/** The document of a rig's shift: `shifts/RIG1_2026-03-14_DAY.json`. The rig's name is one that a file can have. */
export function shiftDocument(rig: string, shift: ShiftOfDay): DocumentName {
  return { kind: 'shift', id: `${rig}_${shift.date}_${shift.name.toUpperCase()}` };
}

function dayBefore(date: string): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) - 86_400_000).toISOString().slice(0, 10);
}
