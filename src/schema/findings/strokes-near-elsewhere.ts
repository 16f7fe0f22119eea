import { defineFinding } from '../../finding/finding.ts';

/** Raised where one slip of a finger types something in another field. */
export const strokesNearElsewhere = defineFinding({
  code: 'schema-strokes-near-elsewhere',
  severity: 'warning',
  title: 'One slip of a finger types something in another field.',
  rationale:
    'The echo shows it in other words, so it is more likely to be seen than a slip within a field; it is still better to have none.',
});
