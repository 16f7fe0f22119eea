import * as z from 'zod';
import { RECOVERIES } from '../../hole/drilled.ts';
import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { breaksCarry } from '../../schema/cautions.ts';
import { inARow } from '../evaluate/run.ts';
import type { Situation } from '../evaluate/situation.ts';
import { streamStretches } from '../evaluate/stretch.ts';
import { defineCondition, lengthM } from '../rules/condition-kind.ts';
import { asInterval, rangesWords, typedFor } from '../rules/doubts.ts';

export const recoveryInARow = defineCondition({
  key: 'recoveryInARow',
  about: 'sample',
  title: 'Recovery at or below a class, so many metres in a row.',
  rationale:
    'Where little comes up the sample says little. From what was seen at the drilled head, counted back from there. A metre without a note of the ' +
    'recovery can’t be told; one that was logged without return has none.',
  example: { atMost: 'poor', forM: 4 },
  shape: {
    atMost: z.enum(RECOVERIES).describe('This class or a worse one'),
    forM: lengthM.describe('How many metres in a row'),
  },
  assess: ({ atMost, forM }, situation) => {
    const least = RECOVERIES.indexOf(atMost);
    return inARow(
      situation,
      streamStretches(withNothingUp(situation), ({ recovery }) =>
        recovery === undefined ? undefined : RECOVERIES.indexOf(recovery) >= least,
      ),
      situation.drilledMm,
      depthFromMetres(forM),
      {
        what: `recovery ${atMost}${atMost === 'none' ? '' : ' or worse'}`,
        there: (stretch) => `better to ${formatDepth(stretch.toMm)} m`,
        doubts: (stretches) => `recovery not noted at ${rangesWords(stretches.map(asInterval))}`,
        needs: (stretches) => [`note it: ${typedFor('recovery good', stretches)}, or as it was`],
      },
    );
  },
});

/** Of a metre without return nothing came up, whatever was noted of its rod by range. */
function withNothingUp(situation: Situation): Situation {
  const none = situation.rows
    .filter((row) => breaksCarry(situation.schema, row))
    .map(({ fromMm, toMm }) => ({ fromMm, toMm, recovery: 'none' as const }));
  return none.length === 0 ? situation : { ...situation, stream: [...situation.stream, ...none] };
}
