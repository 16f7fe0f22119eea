import { defineFinding } from '../../finding/finding.ts';

/** Raised where an only-when compares a field in a way that its kind has no answer for. */
export const onlyWhenSenseless = defineFinding({
  code: 'schema-only-when-senseless',
  severity: 'warning',
  title: 'An only-when compares a field in a way it has no answer for.',
  rationale:
    'A text has no size and a percent has no code: the comparison can never be told, so the field would never be asked.',
});
