import { defineFinding } from '../../finding/finding.ts';

/** Raised when results are held against the issued bags. */
export const resultOfNoBag = defineFinding({
  code: 'result-of-no-bag',
  severity: 'warning',
  title: 'A result has a number that no bag of the project has.',
  rationale: 'The number was misread, or the result is another client’s.',
});
