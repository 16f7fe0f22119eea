import { defineFinding } from '../../finding/finding.ts';

/** Raised where rows hold a code that the schema no longer has. */
export const changeCodeGone = defineFinding({
  code: 'change-code-gone',
  severity: 'warning',
  title: 'Rows hold a code that the schema no longer has.',
  rationale:
    'They still decode by the legend of their hole, but the code can’t be looked up, and checks call it unknown.',
});
