import { defineFinding } from '../../finding/finding.ts';

/** Raised when the issued bags of a hole are checked. */
export const metreTwice = defineFinding({
  code: 'metre-bagged-twice',
  severity: 'fault',
  title: 'A metre is in two primary bags of one rank.',
  rationale:
    'Two results would claim to be the metre. One of the two bags is another metre, or a duplicate said to be a primary.',
});
