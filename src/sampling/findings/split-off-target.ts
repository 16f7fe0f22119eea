import { defineFinding } from '../../finding/finding.ts';

/** Raised by metre from the mass of the calico. */
export const splitOffTarget = defineFinding({
  code: 'split-off-target',
  severity: 'note',
  title: 'A calico is far from the mass that the split should give.',
  rationale: 'A chute that takes too much or too little is set wrong or partly blocked, and splits unfairly.',
});
