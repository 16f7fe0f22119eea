import { defineFinding } from '../../finding/finding.ts';

/** Raised when bag runs are checked. */
export const runBackwards = defineFinding({
  code: 'bag-run-backwards',
  severity: 'fault',
  title: 'A bag run holds no numbers.',
  rationale:
    'Its first and last number are of two prefixes, of another form, or the wrong way round, so no bag can come from it.',
});
