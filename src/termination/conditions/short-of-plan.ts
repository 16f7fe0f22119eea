import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { notGiven, opposite } from '../evaluate/outcome.ts';
import { reached } from '../evaluate/reached.ts';
import { defineCondition, metresM } from '../rules/condition-kind.ts';

export const shortOfPlan = defineCondition({
  key: 'shortOfPlan',
  about: 'people',
  title: 'The hole is shorter than planned, by more than the geologist may decide.',
  rationale:
    'Goes with _ask_ and `whenEnding`: other rules advise ending, and stopping so far short of the plan needs a call. Measured at the ' +
    'drilled head.',
  example: { byMoreThanM: 20 },
  shape: { byMoreThanM: metresM.describe('Metres short of the planned depth that need no call') },
  assess: ({ byMoreThanM }, situation) => {
    if (situation.plan === undefined) return notGiven(situation, 'the hole has no plan');
    const leastMm = situation.plan.depthMm - depthFromMetres(byMoreThanM);
    return opposite(
      reached(situation, leastMm, `(planned ${formatDepth(situation.plan.depthMm)} less ${byMoreThanM} m)`),
    );
  },
});
