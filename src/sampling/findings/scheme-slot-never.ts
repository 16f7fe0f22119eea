import { defineFinding } from '../../finding/finding.ts';

/** Raised when the control scheme is checked. */
export const slotNever = defineFinding({
  code: 'scheme-slot-never',
  severity: 'fault',
  title: 'A slot of the control scheme comes at no number.',
  rationale:
    'A remainder is always smaller than what divides. A slot that never comes looks like a control in the file and is none.',
});
