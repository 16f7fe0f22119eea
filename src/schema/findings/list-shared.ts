import { defineFinding } from '../../finding/finding.ts';

/** Raised where two fields take their codes from one list. */
export const listShared = defineFinding({
  code: 'schema-list-shared',
  severity: 'warning',
  title: 'Two fields take their codes from one list.',
  rationale: 'Pairs and keys type into the first of the two. The other has to be said by its name each time.',
});
