import { defineFinding } from '../../finding/finding.ts';

/** Raised where files extend one another in a ring. */
export const circular = defineFinding({
  code: 'schema-circular',
  severity: 'fault',
  title: 'Logging schemas extend one another in a ring.',
  rationale: 'A ring has no beginning, so there is nothing to start from.',
});
