import { defineFinding } from '../../finding/finding.ts';

/** Raised where a row holds together what the project says is seldom seen together. */
export const rowUnlikely = defineFinding({
  code: 'row-unlikely',
  severity: 'warning',
  title: 'A row holds together what is seldom seen together.',
  rationale:
    'It may be true, and then it is worth a remark. More often one of the two is a slip that no other check can see.',
});
