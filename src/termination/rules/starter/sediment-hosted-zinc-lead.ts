import type { Condition } from '../../../condition/condition.ts';
import type { Rule } from '../rule.ts';
import { USUAL_RULES } from './usual.ts';

const ORE: Condition = {
  any: [
    { field: 'sulphides', of: 'SPH', atLeast: 1 },
    { field: 'sulphides', of: 'GAL', atLeast: 1 },
  ],
};
/** Pyrite alone doesn't hold a hole: some beds have it for tens of metres. */
const BARREN: Condition = {
  all: [
    { field: 'sulphides', of: 'SPH', lessThan: 0.5 },
    { field: 'sulphides', of: 'GAL', lessThan: 0.5 },
  ],
};

/** For sediment-hosted zinc–lead. Ore beds come several to a stack, and pale sphalerite is easily missed: the tail is 20 m. */
export const SEDIMENT_HOSTED_ZINC_LEAD_RULES: readonly Rule[] = [
  ...USUAL_RULES,
  {
    name: 'gas',
    words: 'Gas in the last twelve metres: it can kill. Go by the site’s procedure for gas.',
    verdict: 'ask',
    when: { ofLast: { where: { field: 'events', of: 'GAS', seen: true }, atLeastM: 1, ofM: 12 } },
    safety: true,
  },
  {
    name: 'still in ore',
    words:
      'Sphalerite or galena of 1 % or more in the last three metres: its foot is not drilled. Call first.',
    verdict: 'ask',
    when: { ofLast: { where: ORE, atLeastM: 1, ofM: 3 } },
    whenEnding: true,
  },
  {
    name: 'barren tail',
    words:
      'Past the ore: 20 m in a row under half a percent of sphalerite and of galena, after two metres of ore.',
    verdict: 'may end',
    when: { all: [{ seen: { where: ORE, forM: 2 } }, { inARow: { where: BARREN, forM: 20 } }] },
  },
  {
    name: 'planned and barren',
    words: 'The planned depth is drilled; the last ten metres have no half percent of sphalerite or galena.',
    verdict: 'end',
    when: { all: [{ plannedDepthReached: { plusM: 0 } }, { inARow: { where: BARREN, forM: 10 } }] },
  },
];
