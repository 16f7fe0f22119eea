import { defineFinding } from '../../finding/finding.ts';

/** Raised where a code in use has the pair or key of a retired one. */
export const retiredPairReused = defineFinding({
  code: 'schema-retired-pair-reused',
  severity: 'fault',
  title: 'The pair or key of a retired code is given to another.',
  rationale:
    'Hands remember. Somebody who has typed it for years would log the new code and mean the old one.',
});
