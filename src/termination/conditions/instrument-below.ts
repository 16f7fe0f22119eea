import * as z from 'zod';
import type { Condition } from '../../condition/condition.ts';
import { depthFromMetres } from '../../quantity/depth.ts';
import { logWhere } from '../evaluate/log.ts';
import { inARow } from '../evaluate/run.ts';
import { deepestMm } from '../evaluate/situation.ts';
import { defineCondition, lengthM } from '../rules/condition-kind.ts';
import { doubtsOf, readingsNeeded } from '../rules/doubts.ts';
import { cutOff } from '../rules/names.ts';
import { seenThere } from '../rules/seen-in-row.ts';

export const instrumentBelow = defineCondition({
  key: 'instrumentBelow',
  about: 'instrument',
  title: 'An instrument reads below a value, so many metres in a row.',
  rationale:
    'Counted back from the drilled head: readings come in by the batch, and until the last metres are read it can’t be told.',
  example: { field: 'magsus', lessThan: 0.5, forM: 10 },
  shape: {
    field: z.string().min(1).describe('Field of the logging schema that holds the readings'),
    lessThan: z.number().describe('In the unit of the field'),
    forM: lengthM.describe('How many metres in a row'),
  },
  asks: ({ field, lessThan }) => [{ field, lessThan }],
  assess: ({ field, lessThan, forM }, situation) => {
    const where: Condition = { field, lessThan };
    return inARow(situation, logWhere(situation, where), deepestMm(situation), depthFromMetres(forM), {
      what: cutOff(situation.schema, where),
      there: (stretch) => seenThere(situation, where, stretch),
      doubts: (stretches) => doubtsOf(situation, where, stretches),
      needs: (stretches) => readingsNeeded(situation, where, stretches),
    });
  },
});
