import { defineFinding } from '../../finding/finding.ts';

/** Raised where a file has a member that is not known there, misses one, or holds the wrong kind of thing. */
export const shape = defineFinding({
  code: 'schema-shape',
  severity: 'fault',
  title: 'Something in a file is not what belongs there.',
  rationale:
    'A misspelt member would otherwise be passed over, and the log would run on something nobody chose.',
});
