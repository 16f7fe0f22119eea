import { defineFinding } from '../../finding/finding.ts';

/** Raised by check-rules.ts. */
export const ruleFieldUnknown = defineFinding({
  code: 'termination-rule-field-unknown',
  severity: 'fault',
  title: 'A rule asks a field that the logging schema does not have.',
  rationale:
    'Nobody can log it, so the rule can never be told; a misspelt field looks like a rule that watches the hole and watches nothing.',
});
