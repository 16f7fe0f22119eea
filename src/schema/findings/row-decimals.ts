import { defineFinding } from '../../finding/finding.ts';

/** Raised where a number has more decimals than its field. */
export const rowDecimals = defineFinding({
  code: 'row-decimals',
  severity: 'fault',
  title: 'A number has more decimals than its field.',
  rationale: 'The instrument does not give them; most likely the point is in the wrong place.',
});
