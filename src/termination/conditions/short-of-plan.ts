import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { notGiven, opposite } from '../evaluate/outcome.ts';
import { reached } from '../evaluate/reached.ts';
import { defineCondition, metresM } from '../rules/condition-kind.ts';

export const shortOfPlan = defineCondition({
  key: 'shortOfPlan',
  about: 'people',
  title: 'The hole is shorter than planned, by more than the geologist may decide.',
  rationale:
    'Goes with _ask_ and `whenEnding`: other rules advise ending, or a person ends the hole, and stopping so far short of the plan needs a ' +
    'call. Measured at the drilled head.',
  example: { byMoreThanM: 20 },
  shape: { byMoreThanM: metresM.describe('Metres short of the planned depth that need no call') },
  assess: ({ byMoreThanM }, situation) => {
    if (situation.plan === undefined) return notGiven(situation, 'the hole has no plan');
    const { depthMm } = situation.plan;
    const shortMm = Math.max(0, depthMm - situation.drilledMm);
    const text = `${formatDepth(shortMm)} m short of the planned ${formatDepth(depthMm)} m (${byMoreThanM} m need no call)`;
    const outcome = opposite(reached(situation, depthMm - depthFromMetres(byMoreThanM), ''));
    return { ...outcome, progress: text, reason: text };
  },
});
