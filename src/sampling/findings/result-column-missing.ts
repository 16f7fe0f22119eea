import { defineFinding } from '../../finding/finding.ts';

/** Raised when a CSV of results is read. */
export const resultColumn = defineFinding({
  code: 'result-column-missing',
  severity: 'fault',
  title: 'A column that the project maps is not in the results.',
  rationale: 'The laboratory changed its layout. Values under a wrong heading look right.',
});
