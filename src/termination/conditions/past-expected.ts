import * as z from 'zod';
import { depthFromMetres } from '../../quantity/depth.ts';
import { notGiven } from '../evaluate/outcome.ts';
import { fromBit, reached } from '../evaluate/reached.ts';
import { deepestMm } from '../evaluate/situation.ts';
import { defineCondition, offsetM } from '../rules/condition-kind.ts';

export const pastExpected = defineCondition({
  key: 'pastExpected',
  about: 'depth',
  title: 'The hole is so far past an expected contact or zone.',
  rationale:
    'The plan says at what depth a zone is expected; past it is past its foot, or past its depth where it has no foot. A zone that ought to have been met and ' +
    'was not is a reason to stop and think: goes with _ask_. Measured at the bit: the last rod done, or the deepest row where the log goes past it. A zone that the plan doesn’t name can’t be told.',
  example: { zone: 'lode', byM: 20 },
  shape: {
    zone: z.string().min(1).describe('Name of the expected zone, as in the plan'),
    byM: offsetM.describe('Metres past it; negative for short of it'),
  },
  assess: ({ zone, byM }, situation) => {
    const expected = situation.expects.find((each) => each.name === zone);
    if (expected === undefined) return notGiven(situation, `the plan expects no ${zone}`);
    const footMm = expected.toMm ?? expected.fromMm;
    const bitMm = deepestMm(situation);
    const text = fromBit(`expected ${zone}`, footMm, bitMm);
    const asked = byM > 0 ? ` (${byM} m past it asked)` : byM < 0 ? ` (from ${-byM} m before it)` : '';
    return reached(situation, footMm + depthFromMetres(byM), '', text + asked, bitMm);
  },
});
