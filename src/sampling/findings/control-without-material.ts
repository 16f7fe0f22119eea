import { defineFinding } from '../../finding/finding.ts';

/** Raised when the control scheme is checked. */
export const withoutMaterial = defineFinding({
  code: 'control-without-material',
  severity: 'warning',
  title: 'The scheme asks for a control that the project lists no material for.',
  rationale:
    'The one at the splitter is told to put in a standard and not which, so that the result can be held against nothing.',
});
