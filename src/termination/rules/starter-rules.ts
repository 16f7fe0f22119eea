import type { Condition } from '../../condition/condition.ts';
import type { Rule } from './rule.ts';

/** What every style starts with: who has to be called, and why the rod in the hole is finished. */
const USUAL_RULES: readonly Rule[] = [
  {
    name: 'hold',
    words: 'Somebody wants to be called before this hole is ended.',
    verdict: 'ask',
    when: { held: {} },
  },
  {
    name: 'void',
    words:
      'A void or old workings: call, and go by the site procedure. Only the log clears metres here; `drillersWord` would take the driller’s word until they are logged.',
    verdict: 'ask',
    when: { voidNear: { inLastM: 6, aheadM: 12 } },
    safety: true,
  },
  {
    name: 'past the limit',
    words: 'Going more than 12 m past the plan needs a call.',
    verdict: 'ask',
    when: { delegatedLimit: { overM: 12 } },
  },
  {
    name: 'stopping short',
    words: 'Stopping more than 30 m short of the plan needs a call.',
    verdict: 'ask',
    when: { shortOfPlan: { byMoreThanM: 30 } },
    whenEnding: true,
  },
  {
    name: 'wet',
    words: 'Wet samples smear: is the rest of the hole worth drilling this way?',
    verdict: 'ask',
    when: { wetInARow: { forM: 6 } },
  },
  {
    name: 'finish the rod',
    words: 'The rest of the rod costs little, and the depth is easy to count.',
    verdict: 'not yet',
    when: { rodFinished: {} },
  },
];

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
 * metres must not end a hole. Leached rock above the copper is no tail: the hole has to have been in copper first.
 */
const PORPHYRY_COPPER_GOLD_RULES: readonly Rule[] = [
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

const BY_STYLE: Readonly<Record<string, readonly Rule[]>> = {
  'orogenic-gold': OROGENIC_GOLD_RULES,
  'porphyry-copper-gold': PORPHYRY_COPPER_GOLD_RULES,
};

/**
 * Termination rules that a project of a starter style begins with. Depths of the place (permit, maximum) are the program's to add: a
 * made-up one would look like a real one. Figures are common practice; `offsider termination --replay` tunes them on finished holes.
 */
export function starterRules(style: string): readonly Rule[] {
  return BY_STYLE[style] ?? USUAL_RULES;
}
