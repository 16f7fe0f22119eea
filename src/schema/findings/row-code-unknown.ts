import { defineFinding } from '../../finding/finding.ts';

/** Raised where a row holds a code that its list does not have. */
export const rowCodeUnknown = defineFinding({
  code: 'row-code-unknown',
  severity: 'fault',
  title: 'A row holds a code that its list does not have.',
  rationale: 'Nobody could say what was seen.',
});
