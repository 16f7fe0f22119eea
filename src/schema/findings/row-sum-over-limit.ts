import { defineFinding } from '../../finding/finding.ts';

/** Raised where the percents of a field add up to more than its limit. */
export const rowSumOverLimit = defineFinding({
  code: 'row-sum-over-limit',
  severity: 'fault',
  title: 'The percents of a field add up to more than its limit.',
  rationale: 'More than all of the chips can’t be sulphide: a digit too many, most likely.',
});
