import { defineFinding } from '../../finding/finding.ts';

/** Raised when the receipt of the laboratory is held against the dispatch. */
export const receiptDiffers = defineFinding({
  code: 'receipt-differs',
  severity: 'fault',
  title: 'The laboratory did not receive the bags that were sent.',
  rationale: 'A missing, doubled or strange number is cheap to find while the sacks still stand there.',
});
