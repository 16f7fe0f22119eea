import { defineFinding } from '../../finding/finding.ts';

/** Raised by check-rules.ts. */
export const ruleTwice = defineFinding({
  code: 'termination-rule-twice',
  severity: 'fault',
  title: 'Two rules have the same name.',
  rationale:
    'A decision records each rule by its name, and a hole changes a rule by its name: with two of one name nobody can say which.',
});
