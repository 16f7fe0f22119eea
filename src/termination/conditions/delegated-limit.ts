import { depthFromMetres } from '../../quantity/depth.ts';
import { notGiven } from '../evaluate/outcome.ts';
import { reached } from '../evaluate/reached.ts';
import { defineCondition, metresM } from '../rules/condition-kind.ts';
import { rodEndFrom } from './rod-finished.ts';

export const delegatedLimit = defineCondition({
  key: 'delegatedLimit',
  about: 'people',
  title: 'The next rod would go further past the plan than the geologist may decide.',
  rationale:
    'Goes with _ask_: call before the rod that crosses the limit is put on, not after. The limit is the planned depth and `overM`. ' +
    'Measured at the drilled head, in whole rods.',
  example: { overM: 12 },
  shape: { overM: metresM.describe('Metres past the planned depth that need no call') },
  assess: ({ overM }, situation) => {
    if (situation.plan === undefined) return notGiven(situation, 'the hole has no plan');
    const limitMm = situation.plan.depthMm + depthFromMetres(overM);
    const lastEndMm = Math.max(0, rodEndFrom(situation, limitMm + 1) - situation.header.rodMm);
    return reached(situation, lastEndMm, `(the next rod passes planned + ${overM} m)`);
  },
});
