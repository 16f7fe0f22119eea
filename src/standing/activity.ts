import type { Project } from '../project/project.ts';
import { instantMs, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { currentActivity, type Span } from '../shift/current.ts';
import { shiftHeaderOf } from '../shift/shift.ts';
import { closed, shiftsOf } from '../shift/shift-end.ts';

/** The shift of a rig that was begun last, with its presumed end where it was left open; undefined before the first. */
export function latestShift(
  { shift }: Project,
  documents: Iterable<Document>,
  rig: string,
  now: Stamp,
): Document | undefined {
  const all = [...documents];
  const found = shiftsOf(all, rig).findLast(
    (each) => instantMs(shiftHeaderOf(each).startsAt) <= instantMs(now) + 300_000,
  );
  return found === undefined ? undefined : closed(found, { documents: all, shifts: shift.shifts, now });
}

/** The shift of a rig that goes on at an instant; undefined where none does, also past the planned end of one left open. */
export function openShift(
  project: Project,
  documents: Iterable<Document>,
  rig: string,
  now: Stamp,
): Document | undefined {
  const shift = latestShift(project, documents, rig, now);
  return shift === undefined || shiftHeaderOf(shift).endedAt !== undefined ? undefined : shift;
}

/** What a rig is doing now, with its minutes so far; undefined where no shift goes on or nothing was started in it. */
export function activityNow(
  project: Project,
  documents: Iterable<Document>,
  rig: string,
  now: Stamp,
): Span | undefined {
  const shift = openShift(project, documents, rig, now);
  return shift === undefined ? undefined : currentActivity(shift, now);
}
