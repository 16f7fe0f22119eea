import * as z from 'zod';
import { triOf } from '../../quantity/tri.ts';
import { known } from '../evaluate/known.ts';
import { defineCondition } from '../rules/condition-kind.ts';

export const hoursSpent = defineCondition({
  key: 'hoursSpent',
  about: 'time',
  title: 'So many hours are spent on the hole.',
  rationale:
    'From the start of the hole to now, by the clock. Goes with _ask_ where the program has a date to keep.',
  example: { atLeastH: 20 },
  shape: { atLeastH: z.number().min(0.1).max(2000).describe('Hours since the hole was started') },
  assess: ({ atLeastH }, situation) =>
    known(
      situation,
      situation.pace,
      ({ hoursOnHole }) => (hoursOnHole === undefined ? undefined : triOf(hoursOnHole >= atLeastH)),
      {
        unknown: 'the hours on the hole are not known: they need the start of drilling and a rod done (;rod)',
        told: ({ hoursOnHole }) => `${(hoursOnHole ?? 0).toFixed(1)} of ${atLeastH} hours on the hole`,
      },
    ),
});
