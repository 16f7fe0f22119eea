import { defineFinding } from '../../finding/finding.ts';

/** Raised from the results of pairs. */
export const duplicateApart = defineFinding({
  code: 'duplicate-apart',
  severity: 'note',
  title: 'A field duplicate and its primary lie far apart.',
  rationale: 'Coarse gold does that, and so do swapped bags and a splitter out of level.',
});
