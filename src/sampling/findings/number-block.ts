import { defineFinding } from '../../finding/finding.ts';

/** Raised when the number blocks of the rigs are checked. */
export const numberBlock = defineFinding({
  code: 'number-block',
  severity: 'fault',
  title: 'A block of bag numbers runs backwards, across prefixes, or over another block.',
  rationale: 'Blocks keep two rigs from giving out the same number. A number is used once, ever.',
});
