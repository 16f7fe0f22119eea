import { defineFinding } from '../../finding/finding.ts';

/** Raised by decision.ts when a hole is checked. */
export const endedAgainstAdvice = defineFinding({
  code: 'termination-ended-against-advice',
  severity: 'note',
  title: 'A hole was ended, or gone on with, against the advice of its rules.',
  rationale:
    'Nothing is wrong with that, and the reason is recorded; the manager who tunes the rules wants to see where they were not followed.',
});
