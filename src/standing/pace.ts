import type { RodDone } from '../hole/drilled.ts';
import { holeNouns, planOf } from '../hole/hole.ts';
import { instantMs, offsetMin, type Stamp, stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import type { PaceKnown } from '../termination/evaluate/situation.ts';

/** How many of the latest rods the pace is taken over: long enough to even out a rod change, short enough to follow the ground. */
const RODS_COUNTED = 5;

/** The pace of drilling, and when the planned depth is reached at it. */
export interface Pace {
  readonly metresPerHour: number;
  /** Undefined where there is no plan or it is reached already. */
  readonly plannedReachedAt: Stamp | undefined;
}

/**
 * Pace over the latest rods, or undefined with fewer than two, or where the clock did not move on between them. Time on
 * standby counts: it is the pace of the hole, not of the bit.
 */
export function paceOf(hole: Document): Pace | undefined {
  const rods = rodsDown(hole);
  const metresPerHour = paceTo(rods);
  const last = rods.at(-1);
  if (metresPerHour === undefined || last === undefined) return undefined;
  const planned = planOf(hole)?.depthMm;
  if (planned === undefined || planned <= last.depthMm) return { metresPerHour, plannedReachedAt: undefined };
  const left = (planned - last.depthMm) / 1000 / metresPerHour;
  return {
    metresPerHour,
    plannedReachedAt: stamp(instantMs(last.at) + left * HOUR_MS, offsetMin(last.at)),
  };
}

/** What the clock told at each rod, the shallowest first: the pace then, and the hours since drilling of the hole began. */
export function paceKnown(hole: Document): readonly PaceKnown[] {
  const rods = rodsDown(hole);
  const began = Math.min(...holeNouns(hole, 'drilling').map((interval) => instantMs(interval.startedAt)));
  return rods.map((rod, index) => {
    const metresPerHour = paceTo(rods.slice(Math.max(0, index - RODS_COUNTED), index + 1));
    const hoursOnHole = (instantMs(rod.at) - began) / HOUR_MS;
    return {
      atMm: rod.depthMm,
      ...(metresPerHour === undefined ? {} : { metresPerHour }),
      ...(Number.isFinite(hoursOnHole) ? { hoursOnHole } : {}),
    };
  });
}

const HOUR_MS = 3_600_000;

function rodsDown(hole: Document): readonly RodDone[] {
  return [...holeNouns(hole, 'rods')].sort((a, b) => a.depthMm - b.depthMm);
}

/** Metres an hour over the latest of these rods. */
function paceTo(rods: readonly RodDone[]): number | undefined {
  const counted = rods.slice(-RODS_COUNTED - 1);
  const first = counted[0];
  const last = counted.at(-1);
  if (first === undefined || last === undefined || first === last) return undefined;
  const hours = (instantMs(last.at) - instantMs(first.at)) / HOUR_MS;
  const drilled = (last.depthMm - first.depthMm) / 1000;
  return hours > 0 && drilled > 0 ? drilled / hours : undefined;
}
