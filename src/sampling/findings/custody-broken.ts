import { defineFinding } from '../../finding/finding.ts';

/** Raised where the one who gave the sacks is not the one who took them last. */
export const custodyBroken = defineFinding({
  code: 'custody-broken',
  severity: 'warning',
  title: 'Sacks changed hands and nobody wrote it down.',
  rationale: 'A chain of custody with a hand missing says nothing about where the samples were.',
});
