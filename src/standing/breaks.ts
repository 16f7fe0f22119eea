import { latestRod } from '../hole/commands/drilled.ts';
import { holeNouns } from '../hole/hole.ts';
import { instantMs, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { spansOf } from '../shift/current.ts';
import { shiftHeaderOf } from '../shift/shift.ts';

/**
 * True where drilling of a hole was broken off between its latest rod and now: another activity of the rig, a change of shift, or
 * the hole suspended and started again. Undefined before the first rod, and where no shift record reaches into that time.
 */
export function brokenOff(documents: readonly Document[], hole: Document, now: Stamp): boolean | undefined {
  const rod = latestRod(hole);
  const drilling = holeNouns(hole, 'drilling');
  const rig = drilling.at(-1)?.rig;
  if (rod === undefined || rig === undefined) return undefined;
  const since = instantMs(rod.at);
  if (drilling.some((each) => instantMs(each.startedAt) > since)) return true;
  const shifts = documents.filter((each) => {
    if (each.kind !== 'shift' || shiftHeaderOf(each).rig !== rig) return false;
    const { startsAt, endedAt } = shiftHeaderOf(each);
    return instantMs(startsAt) <= instantMs(now) && instantMs(endedAt ?? now) >= since;
  });
  const [shift, other] = shifts;
  if (shift === undefined) return undefined;
  return other !== undefined || beganOrEnded(shift, since) || stoodStill(shift, since, now);
}

function beganOrEnded(shift: Document, since: number): boolean {
  const { startsAt, endedAt } = shiftHeaderOf(shift);
  return instantMs(startsAt) > since || endedAt !== undefined;
}

/** True where anything but making metres went on for a minute or more. */
function stoodStill(shift: Document, since: number, now: Stamp): boolean {
  const spans = spansOf(shift, now);
  return spans.some((span, index) => {
    const next = spans[index + 1]?.startedAt ?? now;
    return span.charge !== 'metres' && span.minutes > 0 && instantMs(next) > since;
  });
}
