import { defineFinding } from '../../finding/finding.ts';

/** Raised when the trays of a hole are listed. */
export const trayWithoutPhoto = defineFinding({
  code: 'tray-without-photo',
  severity: 'note',
  title: 'A full chip tray has no photograph.',
  rationale: 'Chips dry, spill and fade. The wet photograph is the only look at them that camp ever gets.',
});
