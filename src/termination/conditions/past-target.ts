import { depthFromMetres } from '../../quantity/depth.ts';
import { notGiven } from '../evaluate/outcome.ts';
import { reached } from '../evaluate/reached.ts';
import { defineCondition, metresM } from '../rules/condition-kind.ts';

export const pastTarget = defineCondition({
  key: 'pastTarget',
  about: 'depth',
  title: 'The hole is so far past its target depth.',
  rationale:
    'The plan names the depth of the target along the hole. A hole that stops on its target has not shown the foot of it. Measured at ' +
    'the drilled head. A plan without a target can’t be told.',
  example: { byM: 20 },
  shape: { byM: metresM.describe('Metres past the target') },
  assess: ({ byM }, situation) => {
    const targetMm = situation.plan?.targetMm;
    if (targetMm === undefined) return notGiven(situation, 'the plan names no target depth');
    return reached(situation, targetMm + depthFromMetres(byM), `(target + ${byM} m)`);
  },
});
