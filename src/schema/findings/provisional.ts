import { defineFinding } from '../../finding/finding.ts';

/** Raised for each code that was added on the rig and not agreed with camp yet. */
export const provisional = defineFinding({
  code: 'schema-provisional',
  severity: 'note',
  title: 'A code was added on the rig and is not agreed with camp yet.',
  rationale: 'Camp settles it: keeps it, or says which code it should have been.',
});
