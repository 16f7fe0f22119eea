import { type Depth, formatDepth } from './depth.ts';

/** Part of a hole from one depth down to another, millimetres, `fromMm < toMm`; it holds its top, not its foot. */
export interface Interval {
  readonly fromMm: Depth;
  readonly toMm: Depth;
}

/** Length of an interval in millimetres. */
export function lengthMm(interval: Interval): number {
  return interval.toMm - interval.fromMm;
}

/** True where two intervals share more than a point. */
export function overlaps(a: Interval, b: Interval): boolean {
  return a.fromMm < b.toMm && b.fromMm < a.toMm;
}

/** Length in millimetres that two intervals share, 0 when they share none. */
export function sharedMm(a: Interval, b: Interval): number {
  return Math.max(0, Math.min(a.toMm, b.toMm) - Math.max(a.fromMm, b.fromMm));
}

/** True where `inner` lies within `outer`, ends included. */
export function within(inner: Interval, outer: Interval): boolean {
  return inner.fromMm >= outer.fromMm && inner.toMm <= outer.toMm;
}

/** `46–47`, in metres with an en dash, as the trade writes an interval. */
export function formatInterval(interval: { readonly fromMm: number; readonly toMm: number }): string {
  return `${formatDepth(interval.fromMm)}–${formatDepth(interval.toMm)}`;
}
