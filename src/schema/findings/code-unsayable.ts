import { defineFinding } from '../../finding/finding.ts';

/** Raised where a code holds what the entry line can’t say. */
export const codeUnsayable = defineFinding({
  code: 'schema-code-unsayable',
  severity: 'fault',
  title: 'A code can’t be said in the entry line.',
  rationale: 'A code that can’t be typed can’t be logged.',
});
