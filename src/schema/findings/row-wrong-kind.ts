import { defineFinding } from '../../finding/finding.ts';

/** Raised where a cell holds another kind of value than its field. */
export const rowWrongKind = defineFinding({
  code: 'row-wrong-kind',
  severity: 'fault',
  title: 'A cell holds another kind of value than its field.',
  rationale: 'The value can’t be read, compared or handed over.',
});
