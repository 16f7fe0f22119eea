import { depthFromMetres } from '../../quantity/depth.ts';
import { reached } from '../evaluate/reached.ts';
import { defineCondition, lengthM } from '../rules/condition-kind.ts';

export const minimumReached = defineCondition({
  key: 'minimumReached',
  about: 'depth',
  title: 'The minimum depth is reached.',
  rationale:
    'Goes with the verdict _not yet_: whatever else holds, the hole goes on until the minimum is drilled, because a shorter one ' +
    'would have to be drilled again. Measured at the drilled head.',
  example: { minimumM: 60 },
  shape: { minimumM: lengthM.describe('The least depth the hole must have, in metres') },
  assess: ({ minimumM }, situation) => reached(situation, depthFromMetres(minimumM), 'minimum'),
});
