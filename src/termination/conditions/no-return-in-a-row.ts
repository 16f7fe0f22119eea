import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { triOf } from '../../quantity/tri.ts';
import { isAsked, logByRow } from '../evaluate/log.ts';
import { inARow } from '../evaluate/run.ts';
import { deepestMm } from '../evaluate/situation.ts';
import { defineCondition, lengthM } from '../rules/condition-kind.ts';
import { causesIn } from '../rules/doubts.ts';

export const noReturnInARow = defineCondition({
  key: 'noReturnInARow',
  about: 'sample',
  title: 'So many metres in a row without return.',
  rationale:
    'No chips, no log and no sample: past some length the hole tells nothing more. From the rows logged as no return, counted back from the drilled head. The one ' +
    'condition that a no-return metre can meet.',
  example: { forM: 6 },
  shape: { forM: lengthM.describe('How many metres in a row') },
  assess: ({ forM }, situation) =>
    inARow(
      situation,
      logByRow(situation, (row) => (isAsked(row) ? 'cannot tell' : triOf(row.noReturn === true))),
      deepestMm(situation),
      depthFromMetres(forM),
      {
        what: 'no return',
        there: (stretch) => `chips to ${formatDepth(stretch.toMm)} m`,
        doubts: (stretches) => causesIn(situation, stretches, () => ['a question is open']),
      },
    ),
});
