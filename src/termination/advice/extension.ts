import type { Decision } from '../../hole/ending.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { rodEndFrom } from '../conditions/rod-finished.ts';
import type { Situation } from '../evaluate/situation.ts';

/** A decision to go on that is not drilled out yet. */
export type Extension = { readonly decision: Decision; readonly toMm: number };

/**
 * The decision to go on that holds the hole, the deepest of those made since the hole was last held, ended or reopened. One that named
 * no depth holds it to the end of the next rod.
 */
export function extensionOf(situation: Situation): Extension | undefined {
  const decisions = situation.decisions ?? [];
  const first = decisions.findLastIndex(({ kind }) => kind !== 'extended') + 1;
  return decisions
    .slice(first)
    .map((decision) => ({ decision, toMm: decision.toMm ?? rodEndFrom(situation, decision.depthMm + 1) }))
    .filter(({ toMm }) => toMm > situation.drilledMm)
    .sort((a, b) => b.toMm - a.toMm)[0];
}

/** `goes on to 132 m, decided by NOK at 120 m, Ines Falk called: zone open`. */
export function extensionWords({ decision, toMm }: Extension): string {
  const { by, depthMm, called, reason } = decision;
  const call = called === undefined ? '' : `, ${called} called`;
  const why = reason === undefined ? '' : `: ${reason}`;
  return `goes on to ${formatDepth(toMm)} m, decided by ${by} at ${formatDepth(depthMm)} m${call}${why}`;
}
