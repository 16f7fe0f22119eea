import { defineFinding } from '../../finding/finding.ts';

/** Raised for what a schema has that it did not have. */
export const changeAdded = defineFinding({
  code: 'change-added',
  severity: 'note',
  title: 'The schema has something new.',
  rationale: 'Rows logged before could not say it: that it is not there says nothing.',
});
