import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { inARow } from '../evaluate/run.ts';
import { streamStretches } from '../evaluate/stretch.ts';
import { defineCondition, lengthM } from '../rules/condition-kind.ts';
import { asInterval, rangesWords, typedFor } from '../rules/doubts.ts';

export const wetInARow = defineCondition({
  key: 'wetInARow',
  about: 'sample',
  title: 'So many wet metres in a row.',
  rationale:
    'Wet metres smear and can’t be split in a riffle; past some length the samples are not worth their metres. From what was seen at the splitter, counted ' +
    'back from the drilled head. A metre without a moisture note is can’t tell.',
  example: { forM: 6 },
  shape: { forM: lengthM.describe('How many wet metres in a row') },
  assess: ({ forM }, situation) =>
    inARow(
      situation,
      streamStretches(situation, (fact) =>
        fact.moisture === undefined ? undefined : fact.moisture === 'wet',
      ),
      situation.drilledMm,
      depthFromMetres(forM),
      {
        what: 'wet',
        there: (stretch) => `not wet to ${formatDepth(stretch.toMm)} m`,
        doubts: (stretches) => `moisture not noted at ${rangesWords(stretches.map(asInterval))}`,
        needs: (stretches) => [`note it: ${typedFor('dry', stretches)}, or moist or wet`],
      },
    ),
});
