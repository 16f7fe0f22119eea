import { holeNouns } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { instantMs, localTime, offsetMin, type Stamp, stamp } from '../quantity/stamp.ts';
import { type Document, documentKey } from '../record/document.ts';
import { SHIFT_REFUSALS } from '../shift/findings.ts';
import { shiftHeaderOf, shiftThings } from '../shift/shift.ts';
import { AHEAD_MS, firstFrom, latestAt } from '../shift/shift-clock.ts';
import { shiftHolding } from '../shift/shift-end.ts';

/** True of the shift that the rig is in now. */
export const isGoingOn = (
  project: Project,
  all: readonly Document[],
  shift: Document,
  now: Stamp,
): boolean => {
  const { rig } = shiftHeaderOf(shift);
  const holding = shiftHolding(now, rig, { documents: all, shifts: project.shift.shifts, now });
  return holding !== undefined && documentKey(holding) === documentKey(shift);
};

/** A time of day as an instant of a shift: from three hours before it began on, for it may have begun earlier than was recorded. */
export function inShift(all: readonly Document[], shift: Document, minute: number, now: Stamp): Stamp {
  const { startsAt } = shiftHeaderOf(shift);
  const from = stamp(instantMs(startsAt) - 3 * 3_600_000, offsetMin(startsAt));
  const near = instantMs(now) - instantMs(startsAt) < 18 * 3_600_000;
  const stamps = stampsAround(all, shift);
  return firstFrom(minute, from, near ? [...stamps, now] : stamps);
}

/** Stamps of a shift, and of the rods and shots since it began: by them a time is read on the clock that it was on. */
export function stampsAround(all: readonly Document[], shift: Document | undefined): readonly Stamp[] {
  if (shift === undefined) return [];
  const { startsAt, endedAt } = shiftHeaderOf(shift);
  const ofHoles = all
    .filter((each) => each.kind === 'hole')
    .flatMap((hole) => [...holeNouns(hole, 'rods'), ...holeNouns(hole, 'shots')].map(({ at }) => at))
    .filter((at) => instantMs(at) >= instantMs(startsAt));
  const own = shiftThings(shift, 'activities').map(([, each]) => each.startedAt);
  return [startsAt, ...own, ...ofHoles, ...(endedAt === undefined ? [] : [endedAt])];
}

/** How long ago a time without a date may be: the longest shift and the hours after it. */
const RECENT_MS = 16 * 3_600_000;

/** The latest such time of day; where that is too long ago, the next one, which has not come: yesterday's shift is gone to first. */
export function recent(minute: number, now: Stamp, stamps: readonly Stamp[]): Stamp {
  const at = latestAt(minute, now, stamps);
  const isOld = instantMs(now) - instantMs(at) > RECENT_MS;
  return isOld ? stamp(instantMs(at) + 86_400_000, offsetMin(at)) : at;
}

/** True for a time that has not come, a few minutes of two clocks apart. */
export const isAhead = (at: Stamp, now: Stamp): boolean => instantMs(at) > instantMs(now) + AHEAD_MS;

export const notYet = (shift: Document, at: Stamp, now: Stamp) => notYetOf(`shift ${shift.id}`, at, now);

export const notYetOf = (thing: string, at: Stamp, now: Stamp) =>
  SHIFT_REFUSALS.timeWrong.at(
    { thing },
    {
      problem: `${localTime(at)} has not come: it is ${localTime(now)}`,
      remedy: 'Give a time that has passed; for an earlier shift go to it first, by F8 and Left.',
    },
  );
