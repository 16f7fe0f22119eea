import { defineFinding } from '../../finding/finding.ts';

/** Raised where a shot is typed or read whose dip or depth can be none. */
export const offScale = defineFinding({
  code: 'survey-off-scale',
  severity: 'fault',
  title: 'A dip or a depth is off its scale.',
  rationale:
    'No hole dips beyond vertical and none of ours is kilometres deep. Such a number is a slip of the pen or of the column, and is held back ' +
    'before it becomes a shot.',
});
