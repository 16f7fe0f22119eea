import { defineFinding } from '../../finding/finding.ts';

/** Raised from the results of certified standards: over 2 SD as a warning in words, over 3 SD as a failure. */
export const standardOff = defineFinding({
  code: 'standard-off',
  severity: 'warning',
  title: 'A standard reads more than two standard deviations from its certified value.',
  rationale:
    'One in twenty does by chance. More than three, or several on one side, is the laboratory’s drift or a wrong sachet.',
});
