import { conditionSchema } from '../../condition/condition.ts';
import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { enough, historyOf, type Leg } from '../evaluate/amount.ts';
import { logWhere } from '../evaluate/log.ts';
import { outcomeOf } from '../evaluate/outcome.ts';
import { topLeg } from '../evaluate/run.ts';
import { deepestMm } from '../evaluate/situation.ts';
import { aheadOf, from } from '../evaluate/span.ts';
import type { Stretch } from '../evaluate/stretch.ts';
import { splitAtLog, toLogged, unloggedOf } from '../evaluate/unlogged.ts';
import { defineCondition, lengthM } from '../rules/condition-kind.ts';
import { readingsNeeded, withDoubt } from '../rules/doubts.ts';
import { cutOff } from '../rules/names.ts';
import { intervalOf } from '../rules/seen-in-row.ts';

export const sinceLastSeen = defineCondition({
  key: 'sinceLastSeen',
  about: 'log',
  title: 'So many metres since something was last seen.',
  rationale:
    'Like a barren tail, but only after the zone: where it was never seen there is nothing to be past, and the hole goes on. Counted back from ' +
    'the drilled head. Metres in doubt, those not logged among them, may each be the last one.',
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
    const headMm = deepestMm(situation);
    const { logged, tail } = splitAtLog(stretches);
    const footMm = tail?.fromMm ?? headMm;
    const haveMm = footMm - (logged.findLast((each) => each.state !== 'no')?.toMm ?? footMm);
    const text =
      last === undefined
        ? `never ${what} to ${formatDepth(footMm)} m`
        : `${formatDepth(haveMm)} of ${formatDepth(needMm)} m since ${what} (to ${formatDepth(last.toMm)} m)${toLogged(tail)}`;
    const inDoubt = stretches.filter((each) => each.state === 'cannot tell');
    const speaks = state === 'cannot tell' ? inDoubt : last ? [last] : [];
    const unlogged = state === 'cannot tell' ? unloggedOf(inDoubt) : [];
    const wait = unlogged.length > 0 ? headMm : headMm + situation.header.intervalMm;
    return outcomeOf(situation, historyOf(legs, needMm), {
      ...(last === undefined ? {} : { amount: { haveMm, needMm } }),
      progress: text,
      reason: state === 'cannot tell' ? withDoubt(situation, where, text, speaks) : text,
      deciding: speaks.map((each) => intervalOf(each.fromMm, each.toMm)),
      unlogged,
      needs: state === 'cannot tell' ? readingsNeeded(situation, where, speaks) : [],
      ahead: aheadOf(
        from(Math.max(headMm, earliestLastMm(stretches, headMm) + needMm)),
        from(state === 'no' ? headMm : wait),
      ),
      foreseen: haveMm > 0,
      ...(last === undefined ? {} : { proviso: `not ${what}` }),
    });
  },
});

/**
 * The shallowest foot that the last one seen can come to have, what is not logged turning out as it suits. Never seen: it has to be
 * seen in a millimetre at least, of what is not logged or of what comes next.
 */
function earliestLastMm(stretches: readonly Stretch[], headMm: number): number {
  const fixedMm = stretches.findLast((each) => each.state !== 'no' && !each.unlogged)?.toMm ?? 0;
  if (stretches.some((each) => each.state === 'yes')) return fixedMm;
  return Math.max(fixedMm, (stretches.find(({ unlogged }) => unlogged)?.fromMm ?? headMm) + 1);
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
