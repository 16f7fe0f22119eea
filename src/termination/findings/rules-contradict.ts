import { defineFinding } from '../../finding/finding.ts';

/** Raised by check-rules.ts. */
export const rulesContradict = defineFinding({
  code: 'termination-rules-contradict',
  severity: 'fault',
  title: 'Two rules ask the same and advise differently.',
  rationale:
    'Where they are met one of the two goes unheard, and the reader of the rules does not know which.',
});
