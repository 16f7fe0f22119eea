import { defineFinding } from '../../finding/finding.ts';

/** Raised where a reading of an instrument is not taken: as typed down a column, or as a line of a CSV. */
export const readingNotTaken = defineFinding({
  code: 'reading-not-taken',
  severity: 'fault',
  title: 'A reading of an instrument is not taken.',
  rationale:
    'A reading laid against the wrong metre, or in the wrong unit, looks like any other: nothing of a file is taken until every line of it fits.',
});
