import { defineFinding } from '../../finding/finding.ts';

/** Raised where a code that rows hold is now called something else. */
export const changeCodeMeaning = defineFinding({
  code: 'change-code-meaning',
  severity: 'fault',
  title: 'A code that rows were logged with is now called something else.',
  rationale: 'The rows were seen by somebody who meant the old words. A changed meaning is a new code.',
});
