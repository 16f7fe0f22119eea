import { defineFinding } from '../../finding/finding.ts';

/** Raised where a CSV of codes lacks a column that the mapping names. */
export const importColumn = defineFinding({
  code: 'codes-column-missing',
  severity: 'fault',
  title: 'A CSV of codes lacks a column that was named.',
  rationale: 'Nothing is taken from it, because what stands in the other columns would be a guess.',
});
