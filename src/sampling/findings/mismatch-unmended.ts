import { defineFinding } from '../../finding/finding.ts';

/** Raised by rod whose bags did not agree and were recorded as expected. */
export const mismatchUnmended = defineFinding({
  code: 'mismatch-unmended',
  severity: 'warning',
  title: 'A mismatch noted at a rod is not mended.',
  rationale:
    'The bags from that rod on are recorded as they were expected, not as they lie: every number may be on the wrong metre.',
});
