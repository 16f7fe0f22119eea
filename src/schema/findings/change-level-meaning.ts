import { defineFinding } from '../../finding/finding.ts';

/** Raised where a level that rows may hold is gone or called something else. */
export const changeLevelMeaning = defineFinding({
  code: 'change-level-meaning',
  severity: 'fault',
  title: 'A level of a scale is gone or called something else.',
  rationale: 'Rows hold the number of the level: under another scale the same number says another thing.',
});
