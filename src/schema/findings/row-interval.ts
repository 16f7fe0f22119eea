import { defineFinding } from '../../finding/finding.ts';

/** Raised where a row ends where it begins, or above. */
export const rowInterval = defineFinding({
  code: 'row-interval',
  severity: 'fault',
  title: 'A row has no length.',
  rationale: 'A row without length covers no metre, and the cover of the log would have a hole nobody sees.',
});
