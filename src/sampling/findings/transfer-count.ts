import { defineFinding } from '../../finding/finding.ts';

/** Raised when the counts at each transfer are held against the dispatch. */
export const transferCount = defineFinding({
  code: 'transfer-count',
  severity: 'warning',
  title: 'The count at a transfer is not the count sent.',
  rationale: 'Bags go missing between two hands. The place to ask is the transfer where the count changed.',
});
