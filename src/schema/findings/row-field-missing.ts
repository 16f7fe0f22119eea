import { defineFinding } from '../../finding/finding.ts';

/** Raised where a row lacks a field that every row must have. */
export const rowFieldMissing = defineFinding({
  code: 'row-field-missing',
  severity: 'fault',
  title: 'A row lacks a field that every row has.',
  rationale: 'Missing is neither none seen nor not observed: the rules could not tell which.',
});
