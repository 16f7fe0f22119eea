import { defineFinding } from '../../finding/finding.ts';

/** Raised from rows that stand elsewhere than where they were logged, over metres whose bags are issued. */
export const rowsMoved = defineFinding({
  code: 'rows-moved',
  severity: 'note',
  title: 'Rows were moved, cut, joined or cleared over metres whose bags are issued.',
  rationale:
    'A bag keeps its number and its metre whatever becomes of the log. Where the log was a metre out the bags may be right, or a metre out with it: only whoever lays calicos beside piles can tell.',
});
