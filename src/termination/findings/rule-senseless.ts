import { defineFinding } from '../../finding/finding.ts';

/** Raised by check-rules.ts. */
export const ruleSenseless = defineFinding({
  code: 'termination-rule-senseless',
  severity: 'fault',
  title: 'A rule compares a field in a way that it has no answer for.',
  rationale:
    'A rock has no size and a percent is no code: the comparison can never be told, or never holds, whatever is logged.',
});
