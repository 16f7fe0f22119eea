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

/** Fresh bedrock: not a boulder in saprolite, where it goes on for metres. */
const BEDROCK: Condition = {
  all: [
    { field: 'horizon', is: 'BDR' },
    { field: 'weathering', atMost: 2 },
  ],
};

/** For lateritic nickel. A boulder looks like bedrock for a metre or three, so it takes six; a hole that stops above has no foot. */
const LATERITIC_NICKEL_RULES: readonly Rule[] = [
  ...USUAL_RULES,
  {
    name: 'stopping in laterite',
    words: 'The last three metres are not bedrock: the foot of the saprolite is not known yet. Call first.',
    verdict: 'ask',
    when: { not: { inARow: { where: BEDROCK, forM: 3 } } },
    whenEnding: true,
  },
  {
    name: 'in bedrock',
    words: 'Six metres in a row of fresh bedrock: more than a boulder.',
    verdict: 'may end',
    when: { inARow: { where: BEDROCK, forM: 6 } },
  },
  {
    name: 'planned and in bedrock',
    words: 'The planned depth is drilled, and the last three metres are fresh bedrock.',
    verdict: 'end',
    when: { all: [{ plannedDepthReached: { plusM: 0 } }, { inARow: { where: BEDROCK, forM: 3 } }] },
  },
];

const ORE: Condition = { field: 'zone', isOneOf: ['HCA', 'DEZ', 'MZO'] };
const UNMINERALISED: Condition = { field: 'zone', is: 'UNZ' };

/** For iron formation. Shale bands part ore from ore, so the tail is longer than the thickest of them usually is. */
const IRON_FORMATION_RULES: readonly Rule[] = [
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

const IN_PEGMATITE: Condition = { field: 'pegmatite', atLeast: 50 };
const OUTSIDE: Condition = { field: 'pegmatite', lessThan: 10 };

/** For lithium pegmatite. Pegmatites lie in stacks: wall rock between two is no tail until it is thicker than the gaps usually are. */
const LITHIUM_PEGMATITE_RULES: readonly Rule[] = [
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

const IN_VEIN: Condition = { field: 'veins', atLeast: 5 };
const NO_VEIN: Condition = { field: 'veins', lessThan: 1 };

/** For epithermal gold–silver. A vein splits and comes together again, so its footwall is drilled for longer than one split is wide. */
const EPITHERMAL_GOLD_SILVER_RULES: readonly Rule[] = [
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

const BY_STYLE: Readonly<Record<string, readonly Rule[]>> = {
  'orogenic-gold': OROGENIC_GOLD_RULES,
  'porphyry-copper-gold': PORPHYRY_COPPER_GOLD_RULES,
  'lateritic-nickel': LATERITIC_NICKEL_RULES,
  'iron-formation': IRON_FORMATION_RULES,
  'lithium-pegmatite': LITHIUM_PEGMATITE_RULES,
  'epithermal-gold-silver': EPITHERMAL_GOLD_SILVER_RULES,
};

/**
 * Termination rules that a project of a starter style begins with. Depths of the place (permit, maximum) are the program's to add: a
 * made-up one would look like a real one. Figures are common practice; `offsider termination --replay` tunes them on finished holes.
 */
export function starterRules(style: string): readonly Rule[] {
  return BY_STYLE[style] ?? USUAL_RULES;
}
