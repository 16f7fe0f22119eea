import { defineFinding } from '../../finding/finding.ts';

/** Raised from the moisture seen at the splitter, where too few follow one another for a wet run. */
export const metresWet = defineFinding({
  code: 'metres-wet',
  severity: 'note',
  title: 'A metre came up wet.',
  rationale: 'A wet sample is worth less than a dry one, and only a flag that stays with it says so.',
});
