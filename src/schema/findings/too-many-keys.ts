import { defineFinding } from '../../finding/finding.ts';

/** Raised where a project has more single keys than can stand apart. */
export const tooManyKeys = defineFinding({
  code: 'schema-too-many-keys',
  severity: 'warning',
  title: 'There are more single keys than can stand apart on a keyboard.',
  rationale:
    'At most nine letters of a keyboard have no neighbour among themselves. With more, one slip types another key.',
});
