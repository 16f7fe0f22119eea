import { defineFinding } from '../../finding/finding.ts';

/** Raised where a pair or a key is none. */
export const strokesUntypable = defineFinding({
  code: 'schema-strokes-untypable',
  severity: 'fault',
  title: 'A pair or key can’t be typed.',
  rationale:
    'A pair is two different lower-case letters, so that a key that bounces makes no pair; a key is one. Nothing else can be told apart in the entry line.',
});
