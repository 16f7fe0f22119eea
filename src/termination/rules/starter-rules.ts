import type { Rule } from './rule.ts';

/** Sulphides of all kinds together, under 1 %. */
const BARREN = { field: 'sulphides', lessThan: 1 } as const;
const MINERALISED = { field: 'sulphides', atLeast: 2 } as const;

/**
 * Termination rules to start from, for the starter style of orogenic gold. Depths of the place (permit, maximum) are the program's to add: a
 * made-up one would look like a real one. Figures are common practice; `offsider termination --replay` tunes them on finished holes.
 */
export const OROGENIC_GOLD_RULES: readonly Rule[] = [
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
