import type { Condition } from '../../../condition/condition.ts';
import type { Rule } from '../rule.ts';
import { USUAL_RULES } from './usual.ts';

const ORE: Condition = {
  any: [
    { field: 'sulphides', atLeast: 20 },
    { field: 'sulphides', of: 'SPH', atLeast: 1 },
    { field: 'sulphides', of: 'CCP', atLeast: 1 },
  ],
};
/** Little sulphide of any kind, and no stringers: below a lens the feeder still carries copper. */
const BARREN: Condition = {
  all: [
    { field: 'sulphides', lessThan: 2 },
    { field: 'sulphides', of: 'SPH', lessThan: 0.5 },
    { field: 'sulphides', of: 'CCP', lessThan: 0.5 },
  ],
};

/** For volcanic-hosted massive sulphide. Lenses lie in stacks with a feeder below them, so the tail is 20 m. */
export const VOLCANIC_MASSIVE_SULPHIDE_RULES: readonly Rule[] = [
  ...USUAL_RULES,
  {
    name: 'still in sulphide',
    words: 'A fifth sulphide, or 1 % of sphalerite or chalcopyrite, in the last three metres. Call first.',
    verdict: 'ask',
    when: { ofLast: { where: ORE, atLeastM: 1, ofM: 3 } },
    whenEnding: true,
  },
  {
    name: 'barren tail',
    words: 'Past the lens and its feeder: 20 m in a row under 2 % sulphides, after two metres of ore.',
    verdict: 'may end',
    when: { all: [{ seen: { where: ORE, forM: 2 } }, { inARow: { where: BARREN, forM: 20 } }] },
  },
  {
    name: 'planned and barren',
    words: 'The planned depth is drilled, and the last ten metres are under 2 % sulphides.',
    verdict: 'end',
    when: { all: [{ plannedDepthReached: { plusM: 0 } }, { inARow: { where: BARREN, forM: 10 } }] },
  },
];
