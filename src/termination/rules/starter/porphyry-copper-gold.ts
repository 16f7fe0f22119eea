import type { Condition } from '../../../condition/condition.ts';
import type { Rule } from '../rule.ts';
import { USUAL_RULES } from './usual.ts';

const COPPER_SULPHIDES = ['CCP', 'BOR', 'CCI', 'COV'] as const;

/** Half a percent of a copper sulphide, or any copper oxide. */
const COPPER: Condition = {
  any: [
    ...COPPER_SULPHIDES.map((of) => ({ field: 'sulphides', of, atLeast: 0.5 })),
    { field: 'copperoxides', seen: true },
  ],
};

/** Under half a percent of each copper sulphide, and above fresh rock looked for copper oxides and seen none. */
const NO_COPPER: Condition = {
  all: [
    ...COPPER_SULPHIDES.map((of) => ({ field: 'sulphides', of, lessThan: 0.5 })),
    {
      any: [
        { field: 'oxidation', atMost: 1 },
        { field: 'copperoxides', seen: false },
      ],
    },
  ],
};

/**
 * For porphyry copper–gold. Copper fades over tens of metres and comes back in the next phase, so the tail is long; a late dyke of a few
 * metres must not end a hole. Leached rock above the copper is not a tail: the hole has to have been in copper first.
 */
export const PORPHYRY_COPPER_GOLD_RULES: readonly Rule[] = [
  ...USUAL_RULES,
  {
    name: 'still in copper',
    words:
      'Copper in three of the last six metres: a hole that ends in it has not found its end. Call first.',
    verdict: 'ask',
    when: { ofLast: { where: COPPER, atLeastM: 3, ofM: 6 } },
    whenEnding: true,
  },
  {
    name: 'barren tail',
    words:
      'Past the copper: 30 m in a row without half a percent of a copper sulphide, after six metres of copper.',
    verdict: 'may end',
    when: { all: [{ seen: { where: COPPER, forM: 6 } }, { inARow: { where: NO_COPPER, forM: 30 } }] },
  },
  {
    name: 'planned and barren',
    words: 'The planned depth is drilled, and the last twelve metres hold no copper to speak of.',
    verdict: 'end',
    when: {
      all: [{ plannedDepthReached: { plusM: 0 } }, { inARow: { where: NO_COPPER, forM: 12 } }],
    },
  },
];
