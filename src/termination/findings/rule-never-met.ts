import { defineFinding } from '../../finding/finding.ts';

/** Raised by check-rules.ts. */
export const ruleNeverMet = defineFinding({
  code: 'termination-rule-never-met',
  severity: 'fault',
  title: 'A rule can never be met.',
  rationale:
    'A rule that no log and no depth can meet looks like a rule that watches the hole, and says nothing at the moment it is there for.',
});
