import { defineFinding } from '../../finding/finding.ts';

/** Raised from the moisture seen at the splitter. */
export const wetRun = defineFinding({
  code: 'wet-run',
  severity: 'note',
  title: 'Wet metres follow one another.',
  rationale:
    'Wet chips carry over from metre to metre and can’t be split in a riffle. The grades of a wet run smear.',
});
