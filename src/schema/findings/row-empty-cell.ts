import { defineFinding } from '../../finding/finding.ts';

/** Raised where a cell of several codes has none. */
export const rowEmptyCell = defineFinding({
  code: 'row-empty-cell',
  severity: 'fault',
  title: 'A cell of several codes has none.',
  rationale: 'None seen and not observed are said in words; nothing at all could be either.',
});
