import { defineFinding } from '../../finding/finding.ts';

/** Raised when a mass is read. */
export const massUnreadable = defineFinding({
  code: 'mass-unreadable',
  severity: 'fault',
  title: 'A mass is no number of kilograms, or more than such a bag can hold.',
  rationale: 'What can’t be read must not become a figure.',
});
