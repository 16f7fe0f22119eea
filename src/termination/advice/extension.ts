import type { Decision } from '../../hole/ending.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { rodEndFrom } from '../conditions/rod-finished.ts';
import type { Situation } from '../evaluate/situation.ts';

/** A decision to go on that is not drilled out yet. */
export type Extension = { readonly decision: Decision; readonly toMm: number };

/**
 * The decision to go on that holds the hole: the last one, unless it is drilled out; what was settled before it no longer counts. One that
 * named no depth holds it to the end of the next rod.
 */
export function extensionOf(situation: Situation): Extension | undefined {
  const decision = situation.decisions?.at(-1);
  if (decision?.kind !== 'extended') return undefined;
  const toMm = decision.toMm ?? rodEndFrom(situation, decision.depthMm + 1);
  return toMm > situation.drilledMm ? { decision, toMm } : undefined;
}

/** `goes on to 132 m, decided by NOK at 120 m, Ines Falk called: zone open`. */
export function extensionWords({ decision, toMm }: Extension): string {
  const { by, depthMm, called, reason } = decision;
  const call = called === undefined ? '' : `, ${called} called`;
  const why = reason === undefined ? '' : `: ${reason}`;
  return `goes on to ${formatDepth(toMm)} m, decided by ${by} at ${formatDepth(depthMm)} m${call}${why}`;
}
