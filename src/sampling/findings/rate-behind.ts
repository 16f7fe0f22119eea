import { defineFinding } from '../../finding/finding.ts';

/** Raised where fewer controls were put out than the rate that is wanted asks for. */
export const rateBehind = defineFinding({
  code: 'rate-behind',
  severity: 'warning',
  title: 'Fewer controls were put out than are wanted.',
  rationale: 'A rate is judged over the whole campaign: what is missing can be made up only while it lasts.',
});
