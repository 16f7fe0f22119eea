import { defineFinding } from '../../finding/finding.ts';

/** Raised where a file of codes is no CSV. */
export const importCsv = defineFinding({
  code: 'codes-not-csv',
  severity: 'fault',
  title: 'A file of codes is not readable as CSV.',
  rationale: 'A quote left open swallows every line below it.',
});
