import { defineFinding } from '../../finding/finding.ts';

/** Raised where a certificate leaves out numbers between those it reports. */
export const resultMissing = defineFinding({
  code: 'result-missing',
  severity: 'warning',
  title: 'A certificate leaves out numbers between those it reports.',
  rationale: 'A calico that is lost at the laboratory is found while its batch still stands there.',
});
