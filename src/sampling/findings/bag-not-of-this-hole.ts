import { defineFinding } from '../../finding/finding.ts';

/** Raised when the issued bags of a hole are held against its bag runs. */
export const bagElsewhere = defineFinding({
  code: 'bag-not-of-this-hole',
  severity: 'fault',
  title: 'A bag was issued in a hole that its number was not labelled for.',
  rationale: 'It is another hole’s bag, left on the stand, and that hole will want its number.',
});
