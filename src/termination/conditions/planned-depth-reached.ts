import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { notGiven } from '../evaluate/outcome.ts';
import { reached } from '../evaluate/reached.ts';
import { defineCondition, offsetM } from '../rules/condition-kind.ts';

export const plannedDepthReached = defineCondition({
  key: 'plannedDepthReached',
  about: 'depth',
  title: 'The planned depth is reached.',
  rationale:
    'The rig is at or below the planned depth of the hole, or so many metres past it (`plusM`; negative for short of it). ' +
    'Measured at the drilled head. A hole without a plan can’t be told.',
  example: { plusM: 0 },
  shape: { plusM: offsetM.describe('Metres past the planned depth; negative for short of it') },
  assess: ({ plusM }, situation) => {
    if (situation.plan === undefined) return notGiven(situation, 'the hole has no plan');
    const plusMm = depthFromMetres(plusM);
    const past = plusM === 0 ? '' : ` ${plusM > 0 ? '+' : '−'} ${formatDepth(Math.abs(plusMm))}`;
    return reached(situation, situation.plan.depthMm + plusMm, `planned${past}`);
  },
});
