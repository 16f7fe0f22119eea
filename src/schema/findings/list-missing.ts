import { defineFinding } from '../../finding/finding.ts';

/** Raised where a field takes its codes from a list that is not there. */
export const listMissing = defineFinding({
  code: 'schema-list-missing',
  severity: 'fault',
  title: 'A field names a list that is not there.',
  rationale: 'The field could not be logged.',
});
