import { conditionSchema } from '../../condition/condition.ts';
import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { enough, historyOf, ofNeeded } from '../evaluate/amount.ts';
import { logWhere } from '../evaluate/log.ts';
import { outcomeOf } from '../evaluate/outcome.ts';
import { deepestMm } from '../evaluate/situation.ts';
import { lengthOf, within } from '../evaluate/stretch.ts';
import { splitAtLog, toLogged, unloggedBelow } from '../evaluate/unlogged.ts';
import { windowAhead, windowLegs } from '../evaluate/window.ts';
import { defineCondition, lengthM } from '../rules/condition-kind.ts';
import { readingsNeeded, withDoubt } from '../rules/doubts.ts';
import { cutOff } from '../rules/names.ts';
import { intervalOf } from '../rules/seen-in-row.ts';

export const ofLast = defineCondition({
  key: 'ofLast',
  about: 'log',
  title: 'So many of the last so many metres.',
  rationale:
    'Forgives a stray metre where a run would start again. Counted back from the drilled head, by length; where the hole is shorter than that, ' +
    'all of it is counted. Metres not logged are in doubt.',
  example: { where: { field: 'sulphides', of: 'PYR', lessThan: 1 }, atLeastM: 16, ofM: 20 },
  shape: {
    where: conditionSchema.describe('What holds of a metre that counts'),
    atLeastM: lengthM.describe('How many metres must count'),
    ofM: lengthM.describe('Of how many metres, back from the drilled head'),
  },
  asks: ({ where }) => [where],
  assess: ({ where, atLeastM, ofM }, situation) => {
    const stretches = logWhere(situation, where);
    const [needMm, ofMm] = [depthFromMetres(atLeastM), depthFromMetres(ofM)];
    const legs = windowLegs(stretches, ofMm);
    const { sure, possible } = legs.at(-1) ?? { sure: 0, possible: 0 };
    const what = cutOff(situation.schema, where);
    const { logged, tail } = splitAtLog(stretches);
    const footMm = tail?.fromMm ?? deepestMm(situation);
    const haveMm = lengthOf(within(logged, footMm - ofMm), (each) => each.state === 'yes');
    const text = `${what} for ${ofNeeded(haveMm, needMm)}${haveMm > needMm ? '' : ' needed'} in the last ${formatDepth(ofMm)} m${toLogged(tail)}`;
    const state = enough(sure, possible, needMm);
    const speaks = within(stretches, deepestMm(situation) - ofMm).filter((each) => each.state === state);
    const inDoubt = state === 'cannot tell';
    return outcomeOf(situation, historyOf(legs, needMm), {
      amount: { haveMm, needMm },
      progress: text,
      reason: inDoubt ? withDoubt(situation, where, text, speaks) : text,
      deciding: speaks.map((each) => intervalOf(each.fromMm, each.toMm)),
      unlogged: inDoubt ? unloggedBelow(stretches, deepestMm(situation) - ofMm) : [],
      needs: inDoubt ? readingsNeeded(situation, where, speaks) : [],
      ahead: windowAhead(situation, stretches, needMm, ofMm),
      foreseen: haveMm > 0,
      proviso: what,
    });
  },
});
