import { defineFinding } from '../../finding/finding.ts';

/** Raised by rod. */
export const hygieneNotLooked = defineFinding({
  code: 'hygiene-not-looked',
  severity: 'note',
  title: 'Nobody recorded whether cyclone and splitter were clean at a rod.',
  rationale: 'What is not recorded can’t be shown later, when a smeared grade is asked about.',
});
