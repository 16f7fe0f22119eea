import { conditionSchema } from '../../condition/condition.ts';
import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { enough, historyOf, type Leg } from '../evaluate/amount.ts';
import { logWhere } from '../evaluate/log.ts';
import { outcomeOf } from '../evaluate/outcome.ts';
import { topLeg } from '../evaluate/run.ts';
import type { Situation } from '../evaluate/situation.ts';
import { aheadOf, from } from '../evaluate/span.ts';
import type { Stretch } from '../evaluate/stretch.ts';
import { defineCondition, lengthM } from '../rules/condition-kind.ts';
import { cutOff } from '../rules/names.ts';
import { intervalOf } from '../rules/seen-in-row.ts';

export const sinceLastSeen = defineCondition({
  key: 'sinceLastSeen',
  about: 'log',
  title: 'So many metres of log since something was last seen.',
  rationale:
    'Like a barren tail, but only after the zone: where it was never seen there is nothing to be past, and the hole goes on. Counted back from ' +
    'the logged head. Metres in doubt may each be the last one.',
  example: { where: { field: 'sulphides', of: 'PYR', atLeast: 1 }, atLeastM: 15 },
  shape: {
    where: conditionSchema.describe('What was last seen'),
    atLeastM: lengthM.describe('How many metres since'),
  },
  asks: ({ where }) => [where],
  assess: ({ where, atLeastM }, situation) => {
    const stretches = logWhere(situation, where);
    const needMm = depthFromMetres(atLeastM);
    const legs = sinceLegs(stretches);
    const { sure, possible } = legs.at(-1) ?? { sure: 0, possible: 0 };
    const state = enough(sure, possible, needMm);
    const what = cutOff(situation.schema, where);
    const last = stretches.findLast((each) => each.state === 'yes');
    const text =
      last === undefined
        ? `never ${what} to ${formatDepth(situation.loggedMm)} m`
        : `${formatDepth(sure)} of ${formatDepth(needMm)} m since ${what} (to ${formatDepth(last.toMm)} m)`;
    const speaks =
      state === 'cannot tell' ? stretches.filter((each) => each.state === state) : last ? [last] : [];
    const wait = situation.loggedMm + situation.header.intervalMm;
    return outcomeOf(situation, historyOf(legs, needMm), {
      ...(last === undefined ? {} : { amount: { haveMm: sure, needMm } }),
      progress: text,
      reason: text,
      deciding: speaks.map((each) => intervalOf(each.fromMm, each.toMm)),
      ahead: aheadOf(
        from(earliestMm(situation, last !== undefined, sure, needMm)),
        from(state === 'no' ? situation.loggedMm : wait),
      ),
      foreseen: sure > 0,
      ...(last === undefined ? {} : { proviso: `not ${what}` }),
    });
  },
});

/** Never seen: it has to be seen in a millimetre at least, and then left behind. */
function earliestMm(situation: Situation, wasSeen: boolean, sure: number, needMm: number): number {
  return situation.loggedMm + (wasSeen ? Math.max(0, needMm - sure) : needMm + 1);
}

/** Lengths since the last that may have been one (sure), and since the last that surely was (possible). */
function sinceLegs(stretches: readonly Stretch[]): readonly Leg[] {
  const legs = topLeg(stretches);
  let surelySeen = false;
  /** Foot of the last that surely was or may have been; and of the shallowest that can be the last. */
  let [lastMm, shallowestMm]: [number, number | undefined] = [0, undefined];
  for (const { fromMm, toMm, state } of stretches) {
    if (state === 'yes') [surelySeen, shallowestMm] = [true, toMm];
    if (state === 'cannot tell') shallowestMm ??= fromMm + 1;
    if (state !== 'no') lastMm = toMm;
    legs.push({
      toMm,
      sure: surelySeen ? toMm - lastMm : 0,
      sureSlope: surelySeen && state === 'no' ? 1 : 0,
      possible: shallowestMm === undefined ? 0 : toMm - shallowestMm,
      possibleSlope: shallowestMm === undefined || state === 'yes' ? 0 : 1,
    });
  }
  return legs;
}
