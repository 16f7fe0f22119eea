import { defineFinding } from '../../finding/finding.ts';

/** Raised where a list calls two codes the same. */
export const labelTwice = defineFinding({
  code: 'schema-label-twice',
  severity: 'warning',
  title: 'Two codes of a list have the same words.',
  rationale: 'The echo and the pick list show words. Two codes with the same ones can’t be told apart.',
});
