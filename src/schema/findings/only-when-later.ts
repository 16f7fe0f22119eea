import { defineFinding } from '../../finding/finding.ts';

/** Raised where an only-when asks a field that stands below. */
export const onlyWhenLater = defineFinding({
  code: 'schema-only-when-later',
  severity: 'fault',
  title: 'An only-when asks a field that stands below it on the log sheet.',
  rationale: 'Fields are filled from the top down: what stands below is not known yet.',
});
