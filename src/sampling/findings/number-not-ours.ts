import { defineFinding } from '../../finding/finding.ts';

/** Raised wherever a bag number is read that has not the form of the project's. */
export const numberNotOurs = defineFinding({
  code: 'bag-number-not-ours',
  severity: 'fault',
  title: 'A bag number has not the form that the project gives its numbers.',
  rationale:
    'A number with a digit too many or another prefix is a typing slip or another project’s bag. The laboratory would ' +
    'report it and nobody could say which metre it was.',
});
