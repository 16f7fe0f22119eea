import { defineFinding } from '../../finding/finding.ts';

/** Raised by check-rules.ts. */
export const ruleCodeUnknown = defineFinding({
  code: 'termination-rule-code-unknown',
  severity: 'fault',
  title: 'A rule asks for a code that the list of its field does not have.',
  rationale:
    'Nobody can log it: the rule takes every metre for one without it, and a barren tail is met in rich ground.',
});
