import { defineFinding } from '../../finding/finding.ts';

/** Raised where a level is not on the scale of its field. */
export const rowLevelOffScale = defineFinding({
  code: 'row-level-off-scale',
  severity: 'fault',
  title: 'A level is not on the scale of its field.',
  rationale: 'It has no words, and can’t be compared.',
});
