import { depthFromMetres } from '../../quantity/depth.ts';
import { fromBit, reached } from '../evaluate/reached.ts';
import { deepestMm } from '../evaluate/situation.ts';
import { defineCondition, lengthM, metresM } from '../rules/condition-kind.ts';

export const boundaryNear = defineCondition({
  key: 'boundaryNear',
  about: 'depth',
  title: 'The depth of a permit or of a boundary is near.',
  rationale:
    'A permit allows a depth, or the hole leaves the tenement at one. Its rule goes before all others, also before a minimum depth. ' +
    '`withinM` is how far ahead it speaks: a rod, where the next one would cross it. Measured at the bit: the last rod done, or the deepest row where the log goes past it.',
  example: { boundaryM: 150, withinM: 6 },
  shape: {
    boundaryM: lengthM.describe('Depth along the hole that must not be passed, in metres'),
    withinM: metresM.describe('Speaks so many metres before it'),
  },
  goesFirst: true,
  assess: ({ boundaryM, withinM }, situation) => {
    const boundaryMm = depthFromMetres(boundaryM);
    const bitMm = deepestMm(situation);
    const text = fromBit('boundary', boundaryMm, bitMm);
    return reached(situation, boundaryMm - depthFromMetres(withinM), '', text, bitMm);
  },
});
