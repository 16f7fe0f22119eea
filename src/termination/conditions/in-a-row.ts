import { conditionSchema } from '../../condition/condition.ts';
import { depthFromMetres } from '../../quantity/depth.ts';
import { logWhere } from '../evaluate/log.ts';
import { inARow as run } from '../evaluate/run.ts';
import { deepestMm } from '../evaluate/situation.ts';
import { defineCondition, lengthM } from '../rules/condition-kind.ts';
import { doubtsOf, readingsNeeded } from '../rules/doubts.ts';
import { cutOff } from '../rules/names.ts';
import { seenThere } from '../rules/seen-in-row.ts';

export const inARow = defineCondition({
  key: 'inARow',
  about: 'log',
  title: 'So many metres in a row, counted back from the drilled head.',
  rationale:
    'The barren tail, most of all: the last so many metres all below a cut-off. Metres count by their length, whatever the length of the rows. ' +
    'Metres drilled and not logged are in it, and can’t be barren yet. A metre without return, not logged, not observed or asked about breaks ' +
    'what is sure; where it could make up what is missing, it can’t be told.',
  example: { where: { field: 'sulphides', of: 'PYR', lessThan: 1 }, forM: 10 },
  shape: {
    where: conditionSchema.describe('What holds of each metre'),
    forM: lengthM.describe('How many metres in a row'),
  },
  asks: ({ where }) => [where],
  assess: ({ where, forM }, situation) =>
    run(situation, logWhere(situation, where), deepestMm(situation), depthFromMetres(forM), {
      what: cutOff(situation.schema, where),
      there: (stretch) => seenThere(situation, where, stretch),
      doubts: (stretches) => doubtsOf(situation, where, stretches),
      needs: (stretches) => readingsNeeded(situation, where, stretches),
    }),
});
