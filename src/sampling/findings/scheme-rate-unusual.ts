import { defineFinding } from '../../finding/finding.ts';

/** Raised when the rates that the slots give are held against published ones. */
export const rateUnusual = defineFinding({
  code: 'scheme-rate-unusual',
  severity: 'note',
  title: 'A kind of control is rarer than published practice.',
  rationale:
    'Few controls tell little about a batch. Published rates are a guide, not a rule: the project decides.',
});
