import { defineFinding } from '../../finding/finding.ts';

/** Raised when the bag runs of all holes are checked together. */
export const runOverlap = defineFinding({
  code: 'bag-run-overlap',
  severity: 'fault',
  title: 'Numbers are labelled for two holes.',
  rationale: 'Both holes would give the same numbers out, and the second bag with a number is worthless.',
});
