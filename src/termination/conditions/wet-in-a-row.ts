import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import { inARow } from '../evaluate/run.ts';
import { streamStretches } from '../evaluate/stretch.ts';
import { defineCondition, lengthM } from '../rules/condition-kind.ts';

export const wetInARow = defineCondition({
  key: 'wetInARow',
  about: 'sample',
  title: 'So many wet metres in a row.',
  rationale:
    'Wet metres smear and can’t be split in a riffle; past some length the samples are not worth their metres. From what was seen at the splitter, counted ' +
    'back from the drilled head. A metre of which nobody noted the moisture can’t be told.',
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
        there: (stretch) =>
          stretch.state === 'no'
            ? `not wet to ${formatDepth(stretch.toMm)} m`
            : `moisture not noted at ${formatInterval(stretch)}`,
      },
    ),
});
