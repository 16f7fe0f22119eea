import { instantMs, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { currentActivity, type Span } from '../shift/current.ts';
import { shiftHeaderOf } from '../shift/shift.ts';

/** The shift of a rig that goes on at an instant: the one started last and not ended; undefined where there is none. */
export function openShift(documents: Iterable<Document>, rig: string): Document | undefined {
  return [...documents]
    .filter(
      (document) =>
        document.kind === 'shift' &&
        shiftHeaderOf(document).rig === rig &&
        shiftHeaderOf(document).endedAt === undefined,
    )
    .sort((a, b) => instantMs(shiftHeaderOf(a).startsAt) - instantMs(shiftHeaderOf(b).startsAt))
    .at(-1);
}

/** What a rig is doing now, with its minutes so far; undefined where no shift goes on or nothing was started in it. */
export function activityNow(documents: Iterable<Document>, rig: string, now: Stamp): Span | undefined {
  const shift = openShift(documents, rig);
  return shift === undefined ? undefined : currentActivity(shift, now);
}
