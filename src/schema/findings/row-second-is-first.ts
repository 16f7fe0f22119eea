import { defineFinding } from '../../finding/finding.ts';

/** Raised where the second code is the first. */
export const rowSecondIsFirst = defineFinding({
  code: 'row-second-is-first',
  severity: 'fault',
  title: 'The second code of a cell is the first.',
  rationale: 'One of the two is a slip.',
});
