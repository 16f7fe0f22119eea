import { defineFinding } from '../../finding/finding.ts';

/** Raised by rod from what was seen. */
export const hygieneUnclean = defineFinding({
  code: 'hygiene-unclean',
  severity: 'note',
  title: 'Cyclone, splitter or hole was not clean at a rod, or the splitter not level.',
  rationale: 'What is left in the cyclone goes into the next bag; a tilted splitter favours one chute.',
});
