import type { Condition } from '../../../condition/condition.ts';
import type { Rule } from '../rule.ts';
import { USUAL_RULES } from './usual.ts';

const IN_VEIN: Condition = { field: 'veins', atLeast: 5 };
const NO_VEIN: Condition = { field: 'veins', lessThan: 1 };

/** For epithermal gold–silver. A vein splits and comes together again, so its footwall is drilled for longer than one split is wide. */
export const EPITHERMAL_GOLD_SILVER_RULES: readonly Rule[] = [
  ...USUAL_RULES,
  {
    name: 'still in the vein',
    words: 'Veins of 5 % or more in the last three metres: the footwall is not drilled yet. Call first.',
    verdict: 'ask',
    when: { ofLast: { where: IN_VEIN, atLeastM: 1, ofM: 3 } },
    whenEnding: true,
  },
  {
    name: 'barren tail',
    words: 'Past the vein: 20 m in a row under 1 % of veins, after two metres of 5 % or more.',
    verdict: 'may end',
    when: { all: [{ seen: { where: IN_VEIN, forM: 2 } }, { inARow: { where: NO_VEIN, forM: 20 } }] },
  },
  {
    name: 'planned and barren',
    words: 'The planned depth is drilled, and the last ten metres are under 1 % of veins.',
    verdict: 'end',
    when: { all: [{ plannedDepthReached: { plusM: 0 } }, { inARow: { where: NO_VEIN, forM: 10 } }] },
  },
];
