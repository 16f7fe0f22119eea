import type { Condition } from '../../../condition/condition.ts';
import type { Rule } from '../rule.ts';
import { USUAL_RULES } from './usual.ts';

const IN_PEGMATITE: Condition = { field: 'pegmatite', atLeast: 50 };
const OUTSIDE: Condition = { field: 'pegmatite', lessThan: 10 };

/** For lithium pegmatite. Pegmatites lie in stacks: wall rock between two is not a tail until it is thicker than the gaps usually are. */
export const LITHIUM_PEGMATITE_RULES: readonly Rule[] = [
  ...USUAL_RULES,
  {
    name: 'still in pegmatite',
    words: 'Pegmatite in the last three metres: its foot is not drilled yet. Call first.',
    verdict: 'ask',
    when: { ofLast: { where: IN_PEGMATITE, atLeastM: 1, ofM: 3 } },
    whenEnding: true,
  },
  {
    name: 'barren tail',
    words: 'Past the pegmatite: 20 m in a row of wall rock, after three metres of pegmatite.',
    verdict: 'may end',
    when: { all: [{ seen: { where: IN_PEGMATITE, forM: 3 } }, { inARow: { where: OUTSIDE, forM: 20 } }] },
  },
  {
    name: 'planned and outside',
    words: 'The planned depth is drilled, and the last ten metres are wall rock.',
    verdict: 'end',
    when: { all: [{ plannedDepthReached: { plusM: 0 } }, { inARow: { where: OUTSIDE, forM: 10 } }] },
  },
];
