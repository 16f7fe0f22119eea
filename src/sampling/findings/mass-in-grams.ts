import { defineFinding } from '../../finding/finding.ts';

/** Raised when a mass is read. */
export const massInGrams = defineFinding({
  code: 'mass-in-grams',
  severity: 'fault',
  title: 'A mass was given in grams where kilograms are asked.',
  rationale: 'A thousand times too much passes for a good recovery in every sum that follows.',
});
