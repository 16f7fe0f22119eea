import { defineFinding } from '../../finding/finding.ts';

/** Raised where two keys, typed one after the other with the amount of the first left out, are a pair that takes an amount. */
export const keysReadAsPair = defineFinding({
  code: 'schema-keys-read-as-pair',
  severity: 'warning',
  title: 'Two keys in a row read as a pair of something else.',
  rationale:
    'With the amount of the first key left out, the two run together: the line would say another thing and nothing would be refused.',
});
