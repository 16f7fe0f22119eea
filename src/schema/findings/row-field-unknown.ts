import { defineFinding } from '../../finding/finding.ts';

/** Raised where a row holds a field that the schema does not have. */
export const rowFieldUnknown = defineFinding({
  code: 'row-field-unknown',
  severity: 'fault',
  title: 'A row holds a field that the schema does not have.',
  rationale: 'Nobody could say what the value means.',
});
