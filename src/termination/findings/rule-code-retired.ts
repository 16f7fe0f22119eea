import { defineFinding } from '../../finding/finding.ts';

/** Raised by check-rules.ts. */
export const ruleCodeRetired = defineFinding({
  code: 'termination-rule-code-retired',
  severity: 'warning',
  title: 'A rule asks for a code that is retired.',
  rationale: 'New rows do not use it any more, so the rule takes them for rows without it.',
});
