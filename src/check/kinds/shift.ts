import type { FindingKind } from '../../finding/finding.ts';
import { SHIFT_QUERIES } from '../../shift/findings/queries.ts';
import { SHIFT_REFUSALS } from '../../shift/findings/refusals.ts';
import { settingsUnsound } from '../../shift/findings/settings-unsound.ts';

/** Every kind of finding that shift/ raises. */
export const SHIFT_FINDING_KINDS: readonly FindingKind[] = [
  ...Object.values(SHIFT_REFUSALS),
  ...Object.values(SHIFT_QUERIES),
  settingsUnsound,
];
