import { defineFinding } from '../../finding/finding.ts';

/** Raised from the results of a standard in the order in which they were reported. Zone tests: Western Electric, Statistical Quality Control Handbook, 1956. */
export const standardRun = defineFinding({
  code: 'standard-run',
  severity: 'warning',
  title: 'Standards one after another lie on one side more than chance gives.',
  rationale: 'A slow drift never fails a single standard and moves every grade.',
});
