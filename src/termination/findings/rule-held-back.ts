import { defineFinding } from '../../finding/finding.ts';

/** Raised by check-rules.ts. */
export const ruleHeldBack = defineFinding({
  code: 'termination-rule-held-back',
  severity: 'warning',
  title: 'A rule ends the hole at a depth at which another still holds it open.',
  rationale:
    'The hole goes on past the depth that the rule was written for: a maximum above a minimum is mostly a slip of the pen.',
});
