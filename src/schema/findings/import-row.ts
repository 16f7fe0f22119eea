import { defineFinding } from '../../finding/finding.ts';

/** Raised where a line of a CSV of codes gives no code. */
export const importRow = defineFinding({
  code: 'codes-line-unusable',
  severity: 'fault',
  title: 'A line of a CSV of codes can’t be used.',
  rationale: 'A code library with a line left out would refuse what somebody logs later.',
});
