import type { Condition } from '../../../condition/condition.ts';
import type { Rule } from '../rule.ts';
import { USUAL_RULES } from './usual.ts';

const ORE: Condition = { field: 'zone', isOneOf: ['HCA', 'DEZ', 'MZO'] };
const UNMINERALISED: Condition = { field: 'zone', is: 'UNZ' };

/** For iron formation. Shale bands part ore from ore, so the tail is longer than the thickest of them usually is. */
export const IRON_FORMATION_RULES: readonly Rule[] = [
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
            { field: 'minerals', of: 'RIE', atLeast: 0.1 },
            { field: 'minerals', of: 'GRU', atLeast: 0.1 },
            { field: 'minerals', of: 'ACT', atLeast: 0.1 },
          ],
        },
        atLeastM: 1,
        ofM: 6,
      },
    },
    safety: true,
  },
  {
    name: 'still in ore',
    words: 'Ore in three of the last six metres: a hole that ends in it has not found its foot. Call first.',
    verdict: 'ask',
    when: { ofLast: { where: ORE, atLeastM: 3, ofM: 6 } },
    whenEnding: true,
  },
  {
    name: 'barren tail',
    words: 'Past the ore: twelve metres in a row of unmineralised rock, after three metres of ore.',
    verdict: 'may end',
    when: { all: [{ seen: { where: ORE, forM: 3 } }, { inARow: { where: UNMINERALISED, forM: 12 } }] },
  },
  {
    name: 'planned and unmineralised',
    words: 'The planned depth is drilled, and the last six metres are unmineralised.',
    verdict: 'end',
    when: { all: [{ plannedDepthReached: { plusM: 0 } }, { inARow: { where: UNMINERALISED, forM: 6 } }] },
  },
];
