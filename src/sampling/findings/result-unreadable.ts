import { defineFinding } from '../../finding/finding.ts';

/** Raised when a CSV of results is read. */
export const resultUnreadable = defineFinding({
  code: 'result-unreadable',
  severity: 'fault',
  title: 'A line of results can’t be read.',
  rationale: 'A result that is guessed at is worse than none.',
});
