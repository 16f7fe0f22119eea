import { defineFinding } from '../finding/finding.ts';

/** Raised where a folder holds no project. */
export const noProjectHere = defineFinding({
  code: 'no-project-here',
  severity: 'fault',
  title: 'The folder holds no offsider project.',
  rationale: 'Starting an empty project in a mistyped folder would hide that the real one was not opened.',
});
