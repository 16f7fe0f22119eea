import { defineFinding } from '../../finding/finding.ts';

/** Raised when trays as filled are held against the project’s compartments. */
export const trayMetres = defineFinding({
  code: 'tray-metres-differ',
  severity: 'warning',
  title: 'A chip tray is recorded with other metres than its place gives it.',
  rationale: 'Chips under the wrong metre make the log wrong for whoever looks again.',
});
