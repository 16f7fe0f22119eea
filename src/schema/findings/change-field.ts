import { defineFinding } from '../../finding/finding.ts';

/** Raised where a field that rows hold is now of another kind, unit, list or scale. */
export const changeField = defineFinding({
  code: 'change-field',
  severity: 'fault',
  title: 'A field that rows were logged with is now of another kind, unit, list or scale.',
  rationale: 'The same value would be read in another way.',
});
