import { defineFinding } from '../../finding/finding.ts';

/** Raised by check-rules.ts. */
export const overrideWithout = defineFinding({
  code: 'termination-override-without',
  severity: 'warning',
  title: 'A hole does without a rule that the project does not have.',
  rationale: 'The rule that was meant stays in force for the hole.',
});
