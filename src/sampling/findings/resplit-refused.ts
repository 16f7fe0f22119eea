import { defineFinding } from '../../finding/finding.ts';

/** Raised where single metres can't be numbered as asked. */
export const resplitRefused = defineFinding({
  code: 'resplit-refused',
  severity: 'fault',
  title: 'Single metres cannot be numbered as asked.',
  rationale: 'A kept metre without a number of its own is found again only by hole and metre.',
});
