import { defineFinding } from '../../finding/finding.ts';

/** Raised where a row and an only-when disagree. */
export const rowOnlyWhen = defineFinding({
  code: 'row-only-when',
  severity: 'fault',
  title: 'A field stands in a row that it is not asked of, or is missing where it is.',
  rationale: 'The habit of sulphides in a row without any, or veins without what fills them, is a slip.',
});
