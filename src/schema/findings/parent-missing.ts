import { defineFinding } from '../../finding/finding.ts';

/** Raised where a file extends a style or a file that is not there. */
export const parentMissing = defineFinding({
  code: 'schema-parent-missing',
  severity: 'fault',
  title: 'A logging schema extends something that is not there.',
  rationale:
    'Without its parent most of its lists are missing, and a log on the rest would have to be done again.',
});
