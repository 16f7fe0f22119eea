import { defineFinding } from '../../finding/finding.ts';

/** Raised where a field that always is something is logged as none. */
export const rowCannotBeNone = defineFinding({
  code: 'row-cannot-be-none',
  severity: 'fault',
  title: 'A field that always is something is logged as none.',
  rationale: 'There is always a rock. None there means a slip.',
});
