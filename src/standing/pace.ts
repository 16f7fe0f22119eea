import { holeNouns, planOf } from '../hole/hole.ts';
import { instantMs, offsetMin, type Stamp, stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';

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
  const rods = [...holeNouns(hole, 'rods')].sort((a, b) => a.depthMm - b.depthMm).slice(-RODS_COUNTED - 1);
  const first = rods[0];
  const last = rods.at(-1);
  if (first === undefined || last === undefined || first === last) return undefined;
  const hours = (instantMs(last.at) - instantMs(first.at)) / 3_600_000;
  const drilled = (last.depthMm - first.depthMm) / 1000;
  if (!(hours > 0) || !(drilled > 0)) return undefined;
  const metresPerHour = drilled / hours;
  const planned = planOf(hole)?.depthMm;
  if (planned === undefined || planned <= last.depthMm) return { metresPerHour, plannedReachedAt: undefined };
  const left = (planned - last.depthMm) / 1000 / metresPerHour;
  return {
    metresPerHour,
    plannedReachedAt: stamp(instantMs(last.at) + left * 3_600_000, offsetMin(last.at)),
  };
}
