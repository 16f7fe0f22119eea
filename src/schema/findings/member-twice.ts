import { defineFinding } from '../../finding/finding.ts';

/** Raised where one object of a file names a member twice. */
export const memberTwice = defineFinding({
  code: 'schema-member-twice',
  severity: 'fault',
  title: 'A member is written twice in one place.',
  rationale:
    'Programs keep one of the two and drop the other without a word. A person has to say which is meant.',
});
