import { defineFinding } from '../../finding/finding.ts';

/** Raised when the rates wanted are held against those that the slots give. */
export const rateShort = defineFinding({
  code: 'scheme-rate-short',
  severity: 'warning',
  title: 'The control scheme gives fewer controls of a kind than are wanted.',
  rationale:
    'A rate that is asked for and not reached shows when the results are reported, and the holes are drilled by then.',
});
