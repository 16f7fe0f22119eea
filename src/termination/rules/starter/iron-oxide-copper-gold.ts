import type { Condition } from '../../../condition/condition.ts';
import type { Rule } from '../rule.ts';
import { USUAL_RULES } from './usual.ts';

/** Copper sulphides together: pyrite alone can go on far past the ore. */
const COPPER: Condition = {
  any: [
    { field: 'sulphides', of: 'CCP', atLeast: 0.5 },
    { field: 'sulphides', of: 'BOR', atLeast: 0.5 },
    { field: 'sulphides', of: 'CCI', atLeast: 0.5 },
  ],
};
/** Neither copper nor the iron oxide that carries it elsewhere in the breccia. */
const BARREN: Condition = {
  all: [
    { field: 'sulphides', of: 'CCP', lessThan: 0.5 },
    { field: 'sulphides', of: 'BOR', lessThan: 0.5 },
    { field: 'sulphides', of: 'CCI', lessThan: 0.5 },
    { field: 'ironoxides', lessThan: 10 },
  ],
};

/** For iron oxide copper–gold. Copper is patchy in the iron oxide, so a tail counts only below the iron oxide itself. */
export const IRON_OXIDE_COPPER_GOLD_RULES: readonly Rule[] = [
  ...USUAL_RULES,
  {
    name: 'radiation',
    words:
      'Uraninite in the last six metres: go by the site’s radiation procedure. Low counts clear nothing.',
    verdict: 'ask',
    when: { ofLast: { where: { field: 'sulphides', of: 'URA', atLeast: 0.1 }, atLeastM: 1, ofM: 6 } },
    safety: true,
  },
  {
    name: 'still in copper',
    words: 'Copper sulphides of half a percent or more in three of the last six metres. Call first.',
    verdict: 'ask',
    when: { ofLast: { where: COPPER, atLeastM: 3, ofM: 6 } },
    whenEnding: true,
  },
  {
    name: 'barren tail',
    words:
      'Past the ore: 24 m in a row without copper and under 10 % iron oxides, after three metres of copper.',
    verdict: 'may end',
    when: { all: [{ seen: { where: COPPER, forM: 3 } }, { inARow: { where: BARREN, forM: 24 } }] },
  },
  {
    name: 'planned and barren',
    words: 'The planned depth is drilled; the last twelve metres have no copper and under 10 % iron oxides.',
    verdict: 'end',
    when: { all: [{ plannedDepthReached: { plusM: 0 } }, { inARow: { where: BARREN, forM: 12 } }] },
  },
];
