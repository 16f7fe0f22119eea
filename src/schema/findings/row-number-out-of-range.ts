import { defineFinding } from '../../finding/finding.ts';

/** Raised where a number is outside the limits of its field. */
export const rowNumberOutOfRange = defineFinding({
  code: 'row-number-out-of-range',
  severity: 'fault',
  title: 'A number is outside the limits of its field.',
  rationale: 'Most likely a digit too many, or another unit.',
});
