import { defineFinding } from '../../finding/finding.ts';

/** Raised where an instrument reading or a required column would carry down the hole. */
export const columnCarries = defineFinding({
  code: 'schema-column-carries',
  severity: 'fault',
  title: 'A reading of an instrument is set to carry or to be required.',
  rationale:
    'A reading belongs to one metre, and it comes in later than the row. Carried, it would be made up; required, no row could be saved before it.',
});
