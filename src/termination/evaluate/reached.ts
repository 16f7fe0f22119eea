import { formatDepth } from '../../quantity/depth.ts';
import { always, historyFrom } from './history.ts';
import { type Outcome, outcomeOf } from './outcome.ts';
import { deepestMm, type Situation } from './situation.ts';
import { aheadOf, from } from './span.ts';

/** "The rig is at or below a depth", with words for it: `drilled 54 of 120 m planned`. A depth above the collar is the collar's. */
export function reached(situation: Situation, depthMm: number, what: string): Outcome {
  const needMm = Math.max(0, depthMm);
  const haveMm = situation.drilledMm;
  const history =
    needMm <= 0
      ? always('yes')
      : haveMm < needMm
        ? always('no')
        : historyFrom([
            { atMm: 0, state: 'no' },
            { atMm: needMm, state: 'yes' },
          ]);
  const text = `drilled ${formatDepth(haveMm)} of ${formatDepth(needMm)} m${what === '' ? '' : ` ${what}`}`;
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
