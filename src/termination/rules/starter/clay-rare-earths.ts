import type { Condition } from '../../../condition/condition.ts';
import type { Rule } from '../rule.ts';
import { USUAL_RULES } from './usual.ts';

/** The foot of the clay: mostly firm chips, or bedrock. Corestones in clay are a metre or two of it. */
const FIRM: Condition = {
  all: [
    { field: 'horizon', isOneOf: ['SRK', 'BDR'] },
    { field: 'weathering', atMost: 3 },
  ],
};

/** For clay-hosted rare earths. The clay is often richest at its foot, so a hole that stops above it has missed what it was for. */
export const CLAY_RARE_EARTHS_RULES: readonly Rule[] = [
  ...USUAL_RULES,
  {
    name: 'stopping in clay',
    words:
      'The last two metres are not saprock or bedrock: the foot of the clay is not known yet. Call first.',
    verdict: 'ask',
    when: { not: { inARow: { where: FIRM, forM: 2 } } },
    whenEnding: true,
  },
  {
    name: 'below the clay',
    words: 'Six metres in a row of saprock or bedrock: more than a corestone.',
    verdict: 'may end',
    when: { inARow: { where: FIRM, forM: 6 } },
  },
  {
    name: 'planned and below the clay',
    words: 'The planned depth is drilled, and the last three metres are saprock or bedrock.',
    verdict: 'end',
    when: { all: [{ plannedDepthReached: { plusM: 0 } }, { inARow: { where: FIRM, forM: 3 } }] },
  },
];
