import type { Rule } from '../../../src/termination/rules/rule.ts';
import type { HoleOverride } from '../../../src/termination/settings.ts';

const BARREN = { field: 'sulphides', of: 'PYR', lessThan: 1 } as const;
const LODE = { field: 'sulphides', of: 'PYR', atLeast: 2 } as const;
const GRANITE = { field: 'rock', is: 'GRN' } as const;

const rule = (verdict: Rule['verdict'], when: Rule['when'], more: Partial<Rule> = {}) => ({
  words: 'Settled before the program.',
  verdict,
  when,
  ...more,
});

/** The rules that the cases go by, each by a short name. */
const RULES: { readonly [name: string]: Omit<Rule, 'name'> } = {
  tail: rule('may end', {
    all: [{ seen: { where: LODE, forM: 1 } }, { inARow: { where: BARREN, forM: 10 } }],
  }),
  foot: rule('end', {
    all: [{ plannedDepthReached: { plusM: 0 } }, { inARow: { where: BARREN, forM: 6 } }],
  }),
  'loose tail': rule('may end', { ofLast: { where: BARREN, atLeastM: 8, ofM: 10 } }),
  since: rule('may end', { sinceLastSeen: { where: LODE, atLeastM: 15 } }),
  'lode cut': rule('end', { seen: { where: LODE, forM: 3 } }),
  contact: rule('may end', { pastContact: { into: GRANITE, byM: 12 } }),
  'thick contact': rule('may end', { pastContact: { into: GRANITE, byM: 6, thickM: 6 } }),
  'granite share': rule('may end', { share: { where: GRANITE, atLeastPercent: 60 } }),
  'no massive': rule('may end', {
    inARow: { where: { not: { field: 'habit', is: 'MAS' } }, forM: 5 },
  }),
  disseminated: rule('may end', { inARow: { where: { field: 'habit', is: 'DIS' }, forM: 5 } }),
  'low magsus': rule('may end', { instrumentBelow: { field: 'suscept', lessThan: 0.5, forM: 5 } }),
  lost: rule('ask', { noReturnInARow: { forM: 6 } }),
  wet: rule('ask', { wetInARow: { forM: 6 } }),
  poor: rule('ask', { recoveryInARow: { atMost: 'poor', forM: 4 } }),
  void: rule(
    'ask',
    { voidNear: { inLastM: 6, aheadM: 12 } },
    { safety: true, call: 'the mine on channel 6' },
  ),
  'void by word': rule(
    'ask',
    { voidNear: { inLastM: 6, aheadM: 12, drillersWord: true } },
    { safety: true, call: 'the mine on channel 6' },
  ),
  fibre: rule(
    'ask',
    {
      ofLast: {
        where: {
          any: [
            { field: 'rock', is: 'GRN' },
            { field: 'sulphides', of: 'CPY', atLeast: 5 },
          ],
        },
        atLeastM: 1,
        ofM: 6,
      },
    },
    { safety: true, call: 'Abel Quist' },
  ),
  hold: rule('ask', { held: {} }),
  minimum: rule('not yet', { minimumReached: { minimumM: 60 } }),
  maximum: rule('end', { maximumReached: { maximumM: 180 } }),
  rod: rule('not yet', { rodFinished: {} }),
  permit: rule('end', { boundaryNear: { boundaryM: 150, withinM: 6 } }),
  limit: rule('ask', { delegatedLimit: { overM: 12 } }, { call: 'Ines Falk' }),
  short: rule('ask', { shortOfPlan: { byMoreThanM: 30 } }, { whenEnding: true, call: 'Ines Falk' }),
  target: rule('may end', { pastTarget: { byM: 20 } }),
  'missing lode': rule('ask', { pastExpected: { zone: 'lode', byM: 20 } }),
  // Granite is GRN: no row can say GRA.
  'no granite': rule('end', {
    all: [
      { plannedDepthReached: { plusM: 0 } },
      { not: { seen: { where: { field: 'rock', is: 'GRA' }, forM: 1 } } },
    ],
  }),
  budget: rule('ask', { budgetSpent: { budgetM: 2400 } }),
  'off plan': rule('ask', { offPlan: { moreThanM: 5 } }),
  unreachable: rule('ask', { targetUnreachable: {} }),
  slow: rule('ask', { paceBelow: { metresPerHour: 4 } }),
  hours: rule('ask', { hoursSpent: { atLeastH: 20 } }),
};

/** A rule of that name. Throws on a name that no rule has: a slip in a case. */
export function ruleNamed(name: string): Rule {
  const found = RULES[name];
  if (found === undefined) throw new Error(`no rule "${name}"`);
  return { name, ...found };
}

/** What three holes do otherwise. */
export const OVERRIDES: readonly HoleOverride[] = [
  { hole: 'MBRC009', by: 'NOK', because: 'short program', without: ['minimum'] },
  {
    hole: 'MBRC010',
    by: 'NOK',
    because: 'the lode comes back here',
    rules: [
      {
        name: 'tail',
        ...rule('may end', {
          all: [{ seen: { where: LODE, forM: 1 } }, { inARow: { where: BARREN, forM: 20 } }],
        }),
      },
    ],
  },
  {
    hole: 'MBRC012',
    by: 'NOK',
    because: 'rods of the small rig',
    rules: [{ name: 'rods left', ...rule('end', { maximumReached: { maximumM: 96 } }) }],
  },
];
