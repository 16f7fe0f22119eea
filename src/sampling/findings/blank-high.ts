import { defineFinding } from '../../finding/finding.ts';

/** Raised from the results of blanks. */
export const blankHigh = defineFinding({
  code: 'blank-high',
  severity: 'warning',
  title: 'A blank shows more than its limit.',
  rationale:
    'What the blank picked up, its neighbours picked up too: carry-over in the cyclone, the splitter or the mill.',
});
