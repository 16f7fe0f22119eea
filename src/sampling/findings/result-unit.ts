import { defineFinding } from '../../finding/finding.ts';

/** Raised where a unit of results is not the one of the mapping, or can't be converted. */
export const resultUnit = defineFinding({
  code: 'result-unit',
  severity: 'fault',
  title: 'Results are in another unit than the mapping says.',
  rationale: 'Parts per billion read as parts per million make an orebody of nothing.',
});
