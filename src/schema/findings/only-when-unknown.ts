import { defineFinding } from '../../finding/finding.ts';

/** Raised where an only-when names a field, code or level that is not there. */
export const onlyWhenUnknown = defineFinding({
  code: 'schema-only-when-unknown',
  severity: 'fault',
  title: 'An only-when asks something that is not there.',
  rationale: 'It could never be told, so the field would never be asked.',
});
