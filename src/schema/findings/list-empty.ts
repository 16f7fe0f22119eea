import { defineFinding } from '../../finding/finding.ts';

/** Raised where a field takes its codes from a list with none to use. */
export const listEmpty = defineFinding({
  code: 'schema-list-empty',
  severity: 'fault',
  title: 'A field names a list without a code that can be used.',
  rationale: 'The field could not be logged.',
});
