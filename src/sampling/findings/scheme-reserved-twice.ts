import { defineFinding } from '../../finding/finding.ts';

/** Raised when the control scheme is checked. */
export const reservedTwice = defineFinding({
  code: 'scheme-reserved-twice',
  severity: 'fault',
  title: 'Two slots of the control scheme reserve the same number.',
  rationale:
    'A bag can hold one control. The second of the two would be left out each time, and its rate falls short unseen.',
});
