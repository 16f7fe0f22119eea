import { defineFinding } from '../../finding/finding.ts';

/** Raised when the form of the bag numbers is checked. */
export const numberPrefixes = defineFinding({
  code: 'number-prefixes',
  severity: 'fault',
  title: 'One prefix of the bag numbers is the beginning of another.',
  rationale: 'A number could then be read in two ways, and the last digits could mean either.',
});
