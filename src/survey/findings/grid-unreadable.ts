import { defineFinding } from '../../finding/finding.ts';

/** Raised where a grid is read from the project's settings. */
export const gridUnreadable = defineFinding({
  code: 'survey-grid-unreadable',
  severity: 'fault',
  title: "The project's map grid can't be used.",
  rationale:
    'Grid azimuths and positions hang on the grid. A wrong unit, a missing datum shift or a misread projection moves every ' +
    'hole, and each still looks well placed among the others.',
});
