import { defineFinding } from '../../finding/finding.ts';

/** Raised when a dispatch is made up. A dispatch with a double is refused. */
export const dispatchDouble = defineFinding({
  code: 'dispatch-double',
  severity: 'fault',
  title: 'A bag is in a dispatch twice, or was sent before.',
  rationale: 'A bag can be in one sack only. Either a number is on two bags or the list is wrong.',
});
