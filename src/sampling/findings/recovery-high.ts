import { defineFinding } from '../../finding/finding.ts';

/** Raised by metre from masses. */
export const recoveryHigh = defineFinding({
  code: 'recovery-high',
  severity: 'warning',
  title: 'More came up than the metre holds.',
  rationale: 'The hole is caving, the bit is larger than said, or two metres are in one bag.',
});
