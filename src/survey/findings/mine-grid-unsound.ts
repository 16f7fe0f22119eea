import { defineFinding } from '../../finding/finding.ts';

/** Raised where a mine grid is made from two common points. */
export const mineGridUnsound = defineFinding({
  code: 'survey-mine-grid-unsound',
  severity: 'fault',
  title: "The common points don't fix the mine grid.",
  rationale:
    'Two pegs known in both grids fix the mine grid. When they lie close together, or their distance differs between the grids, the ' +
    'grid they give is turned or stretched, and so is every hole in it.',
});
