import { conditionSchema } from '../../condition/condition.ts';
import { depthFromMetres } from '../../quantity/depth.ts';
import { enough, historyOf, type Leg, ofNeeded } from '../evaluate/amount.ts';
import { logWhere } from '../evaluate/log.ts';
import { outcomeOf } from '../evaluate/outcome.ts';
import { topLeg } from '../evaluate/run.ts';
import { deepestMm } from '../evaluate/situation.ts';
import { aheadOf, from } from '../evaluate/span.ts';
import { lengthOf, type Stretch } from '../evaluate/stretch.ts';
import { mayHold, unloggedOf } from '../evaluate/unlogged.ts';
import { defineCondition, lengthM } from '../rules/condition-kind.ts';
import { readingsNeeded, withDoubt } from '../rules/doubts.ts';
import { cutOff } from '../rules/names.ts';
import { intervalOf } from '../rules/seen-in-row.ts';

export const seen = defineCondition({
  key: 'seen',
  about: 'log',
  title: 'So many metres of it are in the log at all.',
  rationale:
    'The zone was met: metres that hold, anywhere in the log, added up by length. Not met is certain only where no metre is in doubt.',
  example: { where: { field: 'sulphides', of: 'PYR', atLeast: 2 }, forM: 1 },
  shape: {
    where: conditionSchema.describe('What holds of a metre that counts'),
    forM: lengthM.describe('How many metres in all'),
  },
  asks: ({ where }) => [where],
  assess: ({ where, forM }, situation) => {
    const stretches = logWhere(situation, where);
    const needMm = depthFromMetres(forM);
    const legs = totalLegs(stretches);
    const { sure, possible } = legs.at(-1) ?? { sure: 0, possible: 0 };
    const state = enough(sure, possible, needMm);
    const what = cutOff(situation.schema, where);
    const text = `${what} for ${ofNeeded(sure, needMm)} in all`;
    const speaks = stretches.filter((each) => each.state === state && state !== 'no');
    const unlogged = state === 'yes' ? [] : unloggedOf(stretches);
    const headMm = deepestMm(situation);
    return outcomeOf(situation, historyOf(legs, needMm), {
      amount: { haveMm: sure, needMm },
      progress: text,
      reason: state === 'cannot tell' ? withDoubt(situation, where, text, speaks) : text,
      deciding: speaks.map((each) => intervalOf(each.fromMm, each.toMm)),
      unlogged,
      needs: state === 'cannot tell' ? readingsNeeded(situation, where, speaks) : [],
      ahead: aheadOf(
        from(headMm + Math.max(0, needMm - lengthOf(stretches, mayHold))),
        state === 'yes'
          ? undefined
          : from(state === 'no' || unlogged.length > 0 ? headMm : headMm + situation.header.intervalMm),
      ),
      foreseen: sure > 0,
      proviso: what,
    });
  },
});

function totalLegs(stretches: readonly Stretch[]): readonly Leg[] {
  const legs = topLeg(stretches);
  let [sure, possible] = [0, 0];
  for (const { fromMm, toMm, state } of stretches) {
    const [sureSlope, possibleSlope] = [Number(state === 'yes'), Number(state !== 'no')];
    sure += sureSlope * (toMm - fromMm);
    possible += possibleSlope * (toMm - fromMm);
    legs.push({ toMm, sure, sureSlope, possible, possibleSlope });
  }
  return legs;
}
