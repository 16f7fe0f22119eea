import { defineFinding } from '../../finding/finding.ts';

/** Raised when the bags of all holes are checked together. */
export const usedTwice = defineFinding({
  code: 'number-used-twice',
  severity: 'fault',
  title: 'A bag number is on more than one bag.',
  rationale:
    'The laboratory gives one result for a number. Nobody can say afterwards which of the two metres it belongs to.',
});
