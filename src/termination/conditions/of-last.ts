import { conditionSchema } from '../../condition/condition.ts';
import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { enough, historyOf } from '../evaluate/amount.ts';
import { logWhere } from '../evaluate/log.ts';
import { outcomeOf } from '../evaluate/outcome.ts';
import { windowAhead, windowLegs, within } from '../evaluate/window.ts';
import { defineCondition, lengthM } from '../rules/condition-kind.ts';
import { cutOff } from '../rules/names.ts';
import { intervalOf } from '../rules/seen-in-row.ts';

export const ofLast = defineCondition({
  key: 'ofLast',
  about: 'log',
  title: 'So many of the last so many metres of the log.',
  rationale:
    'Forgives a stray metre where a run would start again. Counted back from the logged head, by length; where less than that is logged, what is ' +
    'logged is counted.',
  example: { where: { field: 'sulphides', of: 'PYR', lessThan: 1 }, atLeastM: 16, ofM: 20 },
  shape: {
    where: conditionSchema.describe('What holds of a metre that counts'),
    atLeastM: lengthM.describe('How many metres must count'),
    ofM: lengthM.describe('Of how many metres, back from the logged head'),
  },
  asks: ({ where }) => [where],
  assess: ({ where, atLeastM, ofM }, situation) => {
    const stretches = logWhere(situation, where);
    const [needMm, ofMm] = [depthFromMetres(atLeastM), depthFromMetres(ofM)];
    const legs = windowLegs(stretches, ofMm);
    const { sure, possible } = legs.at(-1) ?? { sure: 0, possible: 0 };
    const what = cutOff(situation.schema, where);
    const text = `${what} for ${formatDepth(sure)} of ${formatDepth(needMm)} m needed in the last ${formatDepth(ofMm)} m`;
    const state = enough(sure, possible, needMm);
    const speaks = within(stretches, situation.loggedMm - ofMm).filter((each) => each.state === state);
    return outcomeOf(situation, historyOf(legs, needMm), {
      amount: { haveMm: sure, needMm },
      progress: text,
      reason: text,
      deciding: speaks.map((each) => intervalOf(each.fromMm, each.toMm)),
      ahead: windowAhead(situation, stretches, needMm, ofMm),
      foreseen: sure > 0,
      proviso: what,
    });
  },
});
