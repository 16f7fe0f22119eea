import { defineFinding } from '../../finding/finding.ts';

/** Raised when bag runs are checked against the blocks. */
export const runOutside = defineFinding({
  code: 'bag-run-outside',
  severity: 'warning',
  title: 'A bag run lies outside the numbers of its rig.',
  rationale: 'The numbers may be another rig’s, on its way to using them too.',
});
