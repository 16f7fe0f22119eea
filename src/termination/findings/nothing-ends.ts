import { defineFinding } from '../../finding/finding.ts';

/** Raised by check-rules.ts. */
export const nothingEnds = defineFinding({
  code: 'termination-nothing-ends',
  severity: 'warning',
  title: 'No rule ever advises ending the hole.',
  rationale: 'The panel will say not yet to the last metre, and it will soon not be read.',
});
