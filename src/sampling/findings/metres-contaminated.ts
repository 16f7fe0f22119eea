import { defineFinding } from '../../finding/finding.ts';

/** Raised from what was seen at the splitter. */
export const metresContaminated = defineFinding({
  code: 'metres-contaminated',
  severity: 'note',
  title: 'A sample was seen to be contaminated.',
  rationale:
    'Chips of another metre are in it: its grade belongs to no metre, and nobody can see that later.',
});
