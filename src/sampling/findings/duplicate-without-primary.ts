import { defineFinding } from '../../finding/finding.ts';

/** Raised when a duplicate is placed, and when the issued bags of a hole are checked. */
export const duplicateWithoutPrimary = defineFinding({
  code: 'duplicate-without-primary',
  severity: 'fault',
  title: 'A field duplicate names no primary sample that it repeats.',
  rationale:
    'A duplicate says something only beside its twin. Without it the pair is lost and so is the bag.',
});
