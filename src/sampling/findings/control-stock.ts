import { defineFinding } from '../../finding/finding.ts';

/** Raised when stock is counted: sachets that came to site less those in issued bags. */
export const controlStock = defineFinding({
  code: 'control-stock',
  severity: 'warning',
  title: 'A control material is used up or nearly.',
  rationale: 'A standard that has run out is a control missed or a metre under its number.',
});
