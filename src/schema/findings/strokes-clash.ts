import { defineFinding } from '../../finding/finding.ts';

/** Raised where one pair or one key would type two things. */
export const strokesClash = defineFinding({
  code: 'schema-strokes-clash',
  severity: 'fault',
  title: 'One pair or key types two things.',
  rationale: 'The console could not know which is meant, and wrong data is worse than none.',
});
