import { formatDepth } from '../../quantity/depth.ts';
import { always, historyFrom } from './history.ts';
import { type Outcome, outcomeOf } from './outcome.ts';
import { deepestMm, type Situation } from './situation.ts';
import { aheadOf, from } from './span.ts';

/** How far the bit is from a depth that has a name: `boundary at 150 m, 6 m below the bit or less`, `12 m past the boundary at 150 m`. */
export function fromBit(name: string, depthMm: number, bitMm: number): string {
  const at = `${name} at ${formatDepth(depthMm)} m`;
  if (bitMm === depthMm) return `at the ${at}`;
  return bitMm < depthMm
    ? `${at}, ${formatDepth(depthMm - bitMm)} m below the bit or less`
    : `${formatDepth(bitMm - depthMm)} m past the ${at}`;
}

/**
 * "The rig is at or below a depth", with words for it: `drilled 54 of 120 m planned`, or with words of its own. A depth above the collar is the
 * collar's. `haveMm` is what the rods count; of a limit that must not be passed, how deep the bit is at least.
 */
export function reached(
  situation: Situation,
  depthMm: number,
  what: string,
  own?: string,
  haveMm: number = situation.drilledMm,
): Outcome {
  const needMm = Math.max(0, depthMm);
  const history =
    needMm <= 0
      ? always('yes')
      : haveMm < needMm
        ? always('no')
        : historyFrom([
            { atMm: 0, state: 'no' },
            { atMm: needMm, state: 'yes' },
          ]);
  const text =
    own ?? `drilled ${formatDepth(haveMm)} of ${formatDepth(needMm)} m${what === '' ? '' : ` ${what}`}`;
  return outcomeOf(situation, history, {
    amount: { haveMm, needMm },
    progress: text,
    reason: text,
    deciding: [],
    foreseen: true,
    ahead: aheadOf(
      from(Math.max(needMm, haveMm)),
      haveMm < needMm
        ? { fromMm: deepestMm(situation), toMm: Math.max(deepestMm(situation), needMm - 1) }
        : undefined,
    ),
  });
}
