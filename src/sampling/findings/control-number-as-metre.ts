import { defineFinding } from '../../finding/finding.ts';

/** Raised when the issued bags of a hole are held against the scheme. */
export const controlAsMetre = defineFinding({
  code: 'control-number-as-metre',
  severity: 'warning',
  title: 'A number reserved for a control holds a metre, or the other way round, and nobody chose it.',
  rationale:
    'Either the control was forgotten or the stream slipped by one; both show here before the laboratory does.',
});
