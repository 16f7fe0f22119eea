import { depthFromMetres } from '../../quantity/depth.ts';
import { reached } from '../evaluate/reached.ts';
import { defineCondition, lengthM } from '../rules/condition-kind.ts';

export const maximumReached = defineCondition({
  key: 'maximumReached',
  about: 'depth',
  title: 'The maximum depth is reached.',
  rationale:
    'What the rig, its air or the program allows. Goes with _end_, or with _ask_ where someone can allow more. Measured at the ' +
    'drilled head.',
  example: { maximumM: 180 },
  shape: { maximumM: lengthM.describe('The greatest depth the hole may have, in metres') },
  assess: ({ maximumM }, situation) => reached(situation, depthFromMetres(maximumM), 'maximum'),
});
