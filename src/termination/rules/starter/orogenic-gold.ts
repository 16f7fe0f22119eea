import type { Rule } from '../rule.ts';
import { USUAL_RULES } from './usual.ts';

/** Sulphides of all kinds together, under 1 %. */
const BARREN = { field: 'sulphides', lessThan: 1 } as const;
const MINERALISED = { field: 'sulphides', atLeast: 2 } as const;

/** For orogenic gold. A lode is metres wide: ten barren metres behind it are past it. */
export const OROGENIC_GOLD_RULES: readonly Rule[] = [
  ...USUAL_RULES,
  {
    name: 'barren tail',
    words: 'The lode is behind us: ten metres in a row below 1 % sulphides, after 2 % was seen.',
    verdict: 'may end',
    when: {
      all: [{ seen: { where: MINERALISED, forM: 1 } }, { inARow: { where: BARREN, forM: 10 } }],
    },
  },
  {
    name: 'planned and barren',
    words: 'The planned depth is drilled, and the last six metres are below 1 % sulphides.',
    verdict: 'end',
    when: {
      all: [{ plannedDepthReached: { plusM: 0 } }, { inARow: { where: BARREN, forM: 6 } }],
    },
  },
];
