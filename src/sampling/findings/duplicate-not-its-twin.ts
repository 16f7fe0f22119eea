import { defineFinding } from '../../finding/finding.ts';

/** Raised when the issued bags of a hole are checked. */
export const duplicateTwin = defineFinding({
  code: 'duplicate-not-its-twin',
  severity: 'fault',
  title: 'A field duplicate does not hold the metre of its primary.',
  rationale:
    'The pair is compared to tell how well the splitter splits. Two different metres say nothing about it.',
});
