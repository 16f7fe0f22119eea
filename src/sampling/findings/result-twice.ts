import { defineFinding } from '../../finding/finding.ts';

/** Raised where a number has two results that both count. */
export const resultTwice = defineFinding({
  code: 'result-twice',
  severity: 'warning',
  title: 'A sample number has two results.',
  rationale: 'Two calicos may bear one number, or a certificate was issued again and both count.',
});
