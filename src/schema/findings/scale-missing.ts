import { defineFinding } from '../../finding/finding.ts';

/** Raised where a field or list of levels names a scale that is not there. */
export const scaleMissing = defineFinding({
  code: 'schema-scale-missing',
  severity: 'fault',
  title: 'A field names a scale that is not there.',
  rationale: 'The field could not be logged.',
});
