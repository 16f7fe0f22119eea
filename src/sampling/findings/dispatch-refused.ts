import { defineFinding } from '../../finding/finding.ts';

/** Raised where a dispatch can't be made up, found or added to as asked. */
export const dispatchRefused = defineFinding({
  code: 'dispatch-refused',
  severity: 'fault',
  title: 'A dispatch cannot be made up or added to as it was asked.',
  rationale: 'Sacks that leave on a guess are looked for when the results are due.',
});
