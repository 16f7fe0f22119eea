import { defineFinding } from '../../finding/finding.ts';

/** Raised where one file writes the same field, code or level twice. */
export const entryTwice = defineFinding({
  code: 'schema-entry-twice',
  severity: 'fault',
  title: 'A field, code or level is written twice in one file.',
  rationale: 'The second would quietly replace the first.',
});
