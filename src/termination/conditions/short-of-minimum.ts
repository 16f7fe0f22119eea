import { depthFromMetres } from '../../quantity/depth.ts';
import { defineCondition, lengthM } from '../condition-kind.ts';
import { opposite } from '../outcome.ts';
import { reached } from '../reached.ts';

export const shortOfMinimum = defineCondition({
  key: 'shortOfMinimum',
  about: 'depth',
  title: 'The hole is short of its minimum depth.',
  rationale:
    'Goes with the verdict *not yet*: whatever else holds, the hole goes on until the minimum is drilled, because a shorter one ' +
    'would have to be drilled again. Measured at the drilled head.',
  example: { minimumM: 60 },
  shape: { minimumM: lengthM.describe('The least depth the hole must have, in metres') },
  assess: ({ minimumM }, situation) => opposite(reached(situation, depthFromMetres(minimumM), 'minimum')),
});
