import { defineFinding } from '../../finding/finding.ts';

/** Raised where a certificate can't be taken in as asked. */
export const resultsRefused = defineFinding({
  code: 'results-refused',
  severity: 'fault',
  title: 'A certificate cannot be taken in as it was asked.',
  rationale: 'A certificate in the place of another one changes every figure that rests on it.',
});
