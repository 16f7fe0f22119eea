import { defineFinding } from '../../finding/finding.ts';

/** Raised when the shift part of project.json is turned into rules. */
export const settingsUnsound = defineFinding({
  code: 'shift-settings-unsound',
  severity: 'fault',
  title: 'The shift part of project.json does not hold together.',
  rationale:
    'A rate without its band, a shift that overlaps another or two activities on one key give a bill that nobody can check.',
});
