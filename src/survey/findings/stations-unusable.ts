import { defineFinding } from '../../finding/finding.ts';

/** Raised by the path itself when its stations give none. */
export const stationsUnusable = defineFinding({
  code: 'survey-stations-unusable',
  severity: 'fault',
  title: 'The stations of a hole give no path.',
  rationale:
    'A path needs a direction at every station, in order of depth and counted from one north. Positions made from anything ' +
    'else look as good as right ones.',
});
