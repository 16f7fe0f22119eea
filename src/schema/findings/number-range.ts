import { defineFinding } from '../../finding/finding.ts';

/** Raised where a number field has no room between its limits. */
export const numberRange = defineFinding({
  code: 'schema-number-range',
  severity: 'fault',
  title: 'The limits of a number field leave no number.',
  rationale: 'Every reading would be refused.',
});
