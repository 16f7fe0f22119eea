import { defineFinding } from '../../finding/finding.ts';

/** Raised where rows hold a field that is no longer on the log sheet. */
export const changeFieldGone = defineFinding({
  code: 'change-field-gone',
  severity: 'warning',
  title: 'Rows hold a field that is no longer on the log sheet.',
  rationale: 'They keep it and decode by the legend of their hole; new rows will not have it.',
});
