import type { Condition } from '../../../condition/condition.ts';
import type { Rule } from '../rule.ts';
import { USUAL_RULES } from './usual.ts';

const NICKEL: Condition = {
  any: [
    { field: 'sulphides', of: 'PEN', atLeast: 0.5 },
    { field: 'sulphides', of: 'VLR', atLeast: 0.5 },
    { field: 'sulphides', of: 'MLL', atLeast: 0.5 },
    { field: 'rock', is: 'MSU' },
  ],
};
/** Komatiite and what it turns into. */
const ULTRAMAFIC: Condition = {
  field: 'rock',
  isOneOf: ['KMT', 'KSX', 'PER', 'DUN', 'PYX', 'SER', 'TCR', 'TCS', 'TRS'],
};
/** Rocks that a flow can lie on. A dyke, a shale between two flows and a metre without return are none of them. */
const FOOTWALL: Condition = {
  all: [{ field: 'rock', isOneOf: ['BAS', 'KBS', 'DAC'] }, { not: NICKEL }],
};

/** For komatiite-hosted nickel. The ore lies on the basal contact, and another flow can lie below it: the tail is 18 m of footwall. */
export const KOMATIITE_NICKEL_SULPHIDE_RULES: readonly Rule[] = [
  ...USUAL_RULES,
  {
    name: 'fibre',
    words: 'Fibre or chrysotile in the last six metres: go by the site’s procedure for fibre.',
    verdict: 'ask',
    when: {
      ofLast: {
        where: {
          any: [
            { field: 'fibre', seen: true },
            { field: 'alteration', of: 'CHY', atLeast: 1 },
          ],
        },
        atLeastM: 1,
        ofM: 6,
      },
    },
    safety: true,
  },
  {
    name: 'still in nickel sulphide',
    words: 'Nickel sulphide in the last three metres: its footwall is not drilled yet. Call first.',
    verdict: 'ask',
    when: { ofLast: { where: NICKEL, atLeastM: 1, ofM: 3 } },
    whenEnding: true,
  },
  {
    name: 'above the basal contact',
    words: 'Komatiite in three of the last six metres: the basal contact may be just below. Call first.',
    verdict: 'ask',
    when: { ofLast: { where: ULTRAMAFIC, atLeastM: 3, ofM: 6 } },
    whenEnding: true,
  },
  {
    name: 'in the footwall',
    words:
      'Past the basal contact: 18 m in a row of footwall without nickel sulphide, after 3 m of komatiite.',
    verdict: 'may end',
    when: { all: [{ seen: { where: ULTRAMAFIC, forM: 3 } }, { inARow: { where: FOOTWALL, forM: 18 } }] },
  },
  {
    name: 'planned and in the footwall',
    words: 'The planned depth is drilled, and the last ten metres are footwall without nickel sulphide.',
    verdict: 'end',
    when: { all: [{ plannedDepthReached: { plusM: 0 } }, { inARow: { where: FOOTWALL, forM: 10 } }] },
  },
];
