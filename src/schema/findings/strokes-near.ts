import { defineFinding } from '../../finding/finding.ts';

/** Raised where one slip of a finger types another code of the same field, and nothing would ask. */
export const strokesNear = defineFinding({
  code: 'schema-strokes-near',
  severity: 'fault',
  title: 'One slip of a finger types another code of the same field.',
  rationale:
    'A slip to the next key, or two letters the wrong way round, would log the wrong thing without a question. Nobody finds it later.',
});
