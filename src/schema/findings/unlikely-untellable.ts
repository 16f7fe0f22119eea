import { defineFinding } from '../../finding/finding.ts';

/** Raised where an unlikely pair asks something that is not there, or in a way that has no answer. */
export const unlikelyUntellable = defineFinding({
  code: 'schema-unlikely-untellable',
  severity: 'fault',
  title: 'An unlikely pair asks what can never be told.',
  rationale: 'It would never be found, and somebody relies on it to be.',
});
