import { defineFinding } from '../../finding/finding.ts';

/** Raised when the control scheme is checked. */
export const slotUsual = defineFinding({
  code: 'scheme-slot-usual',
  severity: 'fault',
  title: 'The usual kind of a slot is none of the kinds that it can be.',
  rationale:
    'Where nobody chooses, the bag is printed and filled as the usual kind, so it has to be one of those allowed.',
});
