import { defineFinding } from '../../finding/finding.ts';

/** Raised where a percent is not one, or a trace is logged where none may be. */
export const rowAmountOff = defineFinding({
  code: 'row-amount-off',
  severity: 'fault',
  title: 'An amount is not over 0 and at most 100 percent, or is a trace where none may be.',
  rationale: 'Sums and termination rules would be wrong.',
});
