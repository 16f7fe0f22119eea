import { defineFinding } from '../../finding/finding.ts';

/** Raised when a dispatch is made up. */
export const dispatchNotIssued = defineFinding({
  code: 'dispatch-not-issued',
  severity: 'fault',
  title: 'A bag in a dispatch was never issued, or is void.',
  rationale:
    'What goes to the laboratory has to be known to the record first, or its result belongs to nothing.',
});
