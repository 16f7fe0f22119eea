import { defineFinding } from '../../finding/finding.ts';

/** Raised where the steps of a percent field do not rise. */
export const ladder = defineFinding({
  code: 'schema-ladder',
  severity: 'fault',
  title: 'The steps of a percent field do not rise from over 0 to at most 100.',
  rationale: 'Off the steps the console asks. Steps in no order would make it ask about true rows.',
});
