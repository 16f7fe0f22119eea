import { defineFinding } from '../../finding/finding.ts';

/** Raised where a file written by hand is no JSON, or more of it than anybody writes. */
export const notJson = defineFinding({
  code: 'schema-not-json',
  severity: 'fault',
  title: 'A file is not readable as JSON.',
  rationale:
    'Nothing in it can be trusted once a comma or a quote is missing, so nothing of it is used until it is mended.',
});
