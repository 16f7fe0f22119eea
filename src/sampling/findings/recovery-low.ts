import { defineFinding } from '../../finding/finding.ts';

/** Raised by metre from masses, or from the visual class where nothing was weighed. */
export const recoveryLow = defineFinding({
  code: 'recovery-low',
  severity: 'note',
  title: 'Less came up than the metre holds.',
  rationale: 'What is lost is seldom a fair part of the rock: fines go first, and the grade goes with them.',
});
