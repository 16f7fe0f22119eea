import { formatDepth } from '../../quantity/depth.ts';
import { formatInterval, type Interval } from '../../quantity/interval.ts';
import { intervalOf } from '../rules/seen-in-row.ts';
import type { Stretch } from './stretch.ts';

/** The stretches down to the lowest logged metre, and the metres below it that are drilled and not logged. */
export function splitAtLog(stretches: readonly Stretch[]): {
  readonly logged: readonly Stretch[];
  readonly tail: Stretch | undefined;
} {
  const last = stretches.at(-1);
  return last?.unlogged
    ? { logged: stretches.slice(0, -1), tail: last }
    : { logged: stretches, tail: undefined };
}

/** ` to 92 m` where the rig is ahead of the log that a figure rests on, else nothing. */
export function toLogged(tail: Stretch | undefined): string {
  return tail === undefined ? '' : ` to ${formatDepth(tail.fromMm)} m`;
}

/** True of a stretch that may still turn out to hold: it does, or no one has logged it. */
export function mayHold({ state, unlogged }: Stretch): boolean {
  return state === 'yes' || unlogged === true;
}

/**
 * What has to be logged below a depth before it can be told: of a gap only the metres below it; the metres at the foot all, because the log
 * comes to them from above.
 */
export function unloggedBelow(stretches: readonly Stretch[], topMm: number): readonly Interval[] {
  const footMm = stretches.at(-1)?.toMm;
  return joined(unloggedOf(stretches))
    .filter(({ toMm }) => toMm > topMm)
    .map(({ fromMm, toMm }) => intervalOf(toMm === footMm ? fromMm : Math.max(fromMm, topMm), toMm));
}

/** The unlogged ones among the stretches that leave a rule in doubt. */
export function unloggedOf(doubts: readonly Stretch[]): readonly Interval[] {
  return doubts.filter(({ unlogged }) => unlogged).map(({ fromMm, toMm }) => intervalOf(fromMm, toMm));
}

/** Intervals from the top down, those that touch or overlap as one. */
export function joined(intervals: readonly Interval[]): readonly Interval[] {
  const apart: Interval[] = [];
  for (const each of [...intervals].sort((a, b) => a.fromMm - b.fromMm)) {
    const above = apart.at(-1);
    if (above !== undefined && above.toMm >= each.fromMm)
      apart.splice(-1, 1, intervalOf(above.fromMm, Math.max(above.toMm, each.toMm)));
    else apart.push(each);
  }
  return apart;
}

/** What has to be logged before it can be told: `log 25–27 and 4 m more`; `headMm` is where the hole ends today. */
export function logMore(unlogged: readonly Interval[], headMm: number): string {
  const parts = unlogged.map((each) =>
    each.toMm === headMm ? `${formatDepth(each.toMm - each.fromMm)} m more` : formatInterval(each),
  );
  const last = parts.at(-1) ?? '';
  return `log ${parts.length < 2 ? last : `${parts.slice(0, -1).join(', ')} and ${last}`}`;
}
