import { defineFinding } from '../../finding/finding.ts';

/** Raised where an entry is to stand before or after one that is not there. */
export const placeUnknown = defineFinding({
  code: 'schema-place-unknown',
  severity: 'fault',
  title: 'An entry is placed beside one that is not there.',
  rationale: 'The order of the log sheet would be a guess.',
});
