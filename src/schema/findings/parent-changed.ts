import { defineFinding } from '../../finding/finding.ts';

/** Raised where the style or file underneath is not the one that was agreed with. */
export const parentChanged = defineFinding({
  code: 'schema-parent-changed',
  severity: 'warning',
  title: 'The style or file underneath has changed since it was last agreed with.',
  rationale:
    'A list that changes under a project half-way through a program makes its holes hard to compare. Somebody should look before the next hole.',
});
