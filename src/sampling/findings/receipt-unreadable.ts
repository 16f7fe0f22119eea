import { defineFinding } from '../../finding/finding.ts';

/** Raised where no column of a receipt holds sample numbers. */
export const receiptUnreadable = defineFinding({
  code: 'receipt-unreadable',
  severity: 'fault',
  title: 'A receipt holds no sample numbers.',
  rationale: 'A receipt that is taken for another one says that every bag is lost.',
});
