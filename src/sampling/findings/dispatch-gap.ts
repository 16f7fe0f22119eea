import { defineFinding } from '../../finding/finding.ts';

/** Raised when a dispatch is made up. A dispatch with a gap is refused. */
export const dispatchGap = defineFinding({
  code: 'dispatch-gap',
  severity: 'fault',
  title: 'An issued bag between the first and the last of a dispatch is not in it.',
  rationale: 'A bag left behind is found weeks later, or never; the laboratory can only say what came.',
});
