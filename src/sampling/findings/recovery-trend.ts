import { defineFinding } from '../../finding/finding.ts';

/** Raised over all weighed metres of a hole. */
export const recoveryTrendFound = defineFinding({
  code: 'recovery-trend',
  severity: 'note',
  title: 'Recovery falls with depth.',
  rationale: 'A leak, a worn bit or too little air shows as a slope long before a single metre is low.',
});
