import { defineFinding } from '../../finding/finding.ts';

/** Raised where bag numbers could be read as a line. */
export const bagPrefix = defineFinding({
  code: 'schema-bag-number-reads-as-line',
  severity: 'fault',
  title: 'A bag number could be read as a line of the log.',
  rationale:
    'A scanner types into the same line. A number that begins with a small letter could be logged as geology.',
});
