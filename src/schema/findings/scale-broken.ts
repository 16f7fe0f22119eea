import { defineFinding } from '../../finding/finding.ts';

/** Raised where the levels of a scale do not run 1, 2, 3 and so on, or share a code. */
export const scaleBroken = defineFinding({
  code: 'schema-scale-broken',
  severity: 'fault',
  title: 'The levels of a scale are not in order from 1.',
  rationale:
    'A digit types a level. A gap, a level twice or a level that takes two digits can’t be typed or compared.',
});
