import { defineFinding } from '../../finding/finding.ts';

/** Raised where strokes that rows were logged with now type another thing. */
export const changeStrokesShifted = defineFinding({
  code: 'change-strokes-shifted',
  severity: 'fault',
  title: 'A pair or key that rows were logged with now types something else.',
  rationale: 'Hands remember, and an entry line copied from yesterday would log another thing today.',
});
