import type { Condition } from '../../../condition/condition.ts';
import type { Rule } from '../rule.ts';
import { USUAL_RULES } from './usual.ts';

/** Carbonatite, what it weathers to, and the rocks that come with it. */
const INTRUSION: Condition = {
  field: 'rock',
  isOneOf: ['CCB', 'DCB', 'ACB', 'SCB', 'SIC', 'PHO', 'GLI', 'CBR', 'RPH', 'RIO'],
};
/** Wall rock; fenite too, where the ore minerals are gone. */
const WALL_ROCK: Condition = {
  all: [
    { field: 'rock', isOneOf: ['FEN', 'IJO', 'NSY', 'SYE', 'PYX', 'GRN', 'GNS', 'AMP', 'SST', 'SLT', 'LIM'] },
    // A dyke with fenite beside it is no wall rock.
    { not: INTRUSION },
    { field: 'ore', lessThan: 0.5 },
  ],
};

/** For carbonatite. Dykes of it run far into the fenite, so wall rock is a tail only after 24 m without one. */
export const CARBONATITE_RARE_EARTHS_RULES: readonly Rule[] = [
  ...USUAL_RULES,
  {
    name: 'fibre',
    words:
      'Fibre, or an amphibole that can hold it, in the last six metres: go by the site’s procedure for fibre.',
    verdict: 'ask',
    when: {
      ofLast: {
        where: {
          any: [
            { field: 'fibre', seen: true },
            { field: 'minerals', of: 'ALM', atLeast: 0.1 },
          ],
        },
        atLeastM: 1,
        ofM: 6,
      },
    },
    safety: true,
  },
  {
    name: 'still in carbonatite',
    words: 'Carbonatite, or what weathers from it, in three of the last six metres. Call first.',
    verdict: 'ask',
    when: { ofLast: { where: INTRUSION, atLeastM: 3, ofM: 6 } },
    whenEnding: true,
  },
  {
    name: 'in the wall rock',
    words: 'Past the carbonatite: 24 m in a row of wall rock without ore minerals, after 3 m of carbonatite.',
    verdict: 'may end',
    when: { all: [{ seen: { where: INTRUSION, forM: 3 } }, { inARow: { where: WALL_ROCK, forM: 24 } }] },
  },
  {
    name: 'planned and in the wall rock',
    words: 'The planned depth is drilled, and the last twelve metres are wall rock without ore minerals.',
    verdict: 'end',
    when: { all: [{ plannedDepthReached: { plusM: 0 } }, { inARow: { where: WALL_ROCK, forM: 12 } }] },
  },
];
