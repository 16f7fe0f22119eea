import type { Interval } from '../quantity/interval.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { ChargeClass } from './charge-class.ts';

/** Time spent on one activity at one hole. */
export interface Work {
  readonly activity: string;
  readonly charge: ChargeClass;
  readonly hole?: string;
  readonly minutes: number;
  /** What ran beside it: a booster, an auxiliary compressor. */
  readonly beside?: readonly string[];
}

/** Metres drilled in one hole. A plod may claim the same metres twice: they count twice. */
export interface DrilledMetres extends Interval {
  readonly hole: string;
  /** Charge class of the activity that they were drilled in; undefined where none was recorded. */
  readonly charge: ChargeClass | undefined;
  /** When the rod was stamped; our own metres only. */
  readonly at?: Stamp;
}

/** What one side says of a shift, our own record or the driller's plods: the two are compared with each other in this shape. */
export interface ShiftRecord {
  readonly work: readonly Work[];
  readonly metres: readonly DrilledMetres[];
  /**
   * Stretches that came up wet, none of a hole over another, where this side says so itself: a sheet that calls metres wet. Else the
   * wet samples of the record count for both sides.
   */
  readonly wet?: readonly (Interval & { readonly hole: string })[];
  /** Survey shots by hole. */
  readonly shots: ReadonlyMap<string, number>;
  /** Consumables used up by item. */
  readonly consumables: ReadonlyMap<string, number>;
}

/**
 * True where metres are paid by the metre: not those drilled on the hour, and not those drilled without charge, as in a redrill at
 * the driller's fault.
 */
export function paidByMetre(metres: DrilledMetres): boolean {
  return metres.charge !== 'active hourly' && metres.charge !== 'no charge';
}

/** Adds up numbers by key, in the order in which the keys first come. */
export function sumBy<T>(
  items: readonly T[],
  key: (item: T) => string,
  value: (item: T) => number,
): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  for (const item of items) sums.set(key(item), (sums.get(key(item)) ?? 0) + value(item));
  return sums;
}

/** Time on an activity, the hole left out if none is given. */
export function workOf(
  said: {
    readonly activity: string;
    readonly minutes: number;
    readonly hole?: string | undefined;
    readonly beside?: readonly string[] | undefined;
  },
  charge: ChargeClass,
): Work {
  const { activity, minutes, hole, beside } = said;
  return {
    activity,
    charge,
    minutes,
    ...(hole === undefined ? {} : { hole }),
    ...(beside === undefined ? {} : { beside }),
  };
}
