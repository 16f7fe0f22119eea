import { defineFinding } from '../../finding/finding.ts';

/** Raised where a row without return holds something observed. */
export const rowNoReturnObserves = defineFinding({
  code: 'row-no-return-observes',
  severity: 'fault',
  title: 'A row without return holds something observed.',
  rationale: 'Nothing came up, so nothing was seen; the metre must never count as barren.',
});
