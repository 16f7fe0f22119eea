import { defineFinding } from '../../finding/finding.ts';

/** Raised where what rows were logged with is now typed in another way. */
export const changeStrokesDropped = defineFinding({
  code: 'change-strokes-dropped',
  severity: 'warning',
  title: 'What rows were logged with is now typed another way.',
  rationale:
    'The old strokes are refused from now on. That is safe, and somebody will have to learn it in the middle of a hole.',
});
