import { defineFinding } from '../../finding/finding.ts';

/** Raised where a list has a code twice, capitals aside. */
export const codeTwice = defineFinding({
  code: 'schema-code-twice',
  severity: 'fault',
  title: 'A list has the same code twice.',
  rationale: 'Nobody could say later which of the two was logged.',
});
