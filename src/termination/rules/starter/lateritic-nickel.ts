import type { Condition } from '../../../condition/condition.ts';
import type { Rule } from '../rule.ts';
import { USUAL_RULES } from './usual.ts';

/** Fresh bedrock: not a boulder in saprolite, where it goes on for metres. */
const BEDROCK: Condition = {
  all: [
    { field: 'horizon', is: 'BDR' },
    { field: 'weathering', atMost: 2 },
  ],
};

/** For lateritic nickel. A boulder looks like bedrock for a metre or three, so it takes six; a hole that stops above has no foot. */
export const LATERITIC_NICKEL_RULES: readonly Rule[] = [
  ...USUAL_RULES,
  {
    name: 'stopping in laterite',
    words: 'The last three metres are not bedrock: the foot of the saprolite is not known yet. Call first.',
    verdict: 'ask',
    when: { not: { inARow: { where: BEDROCK, forM: 3 } } },
    whenEnding: true,
  },
  {
    name: 'in bedrock',
    words: 'Six metres in a row of fresh bedrock: more than a boulder.',
    verdict: 'may end',
    when: { inARow: { where: BEDROCK, forM: 6 } },
  },
  {
    name: 'planned and in bedrock',
    words: 'The planned depth is drilled, and the last three metres are fresh bedrock.',
    verdict: 'end',
    when: { all: [{ plannedDepthReached: { plusM: 0 } }, { inARow: { where: BEDROCK, forM: 3 } }] },
  },
];
