import { defineFinding } from '../../finding/finding.ts';

/** Raised where a pair, a field or a code is a word that the entry line or a file keeps for itself. */
export const reserved = defineFinding({
  code: 'schema-reserved-word',
  severity: 'fault',
  title: 'A word that is kept for something else is used.',
  rationale: 'The line would mean two things, or two columns of the handover would have one name.',
});
