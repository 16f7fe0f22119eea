import { defineFinding } from '../finding/finding.ts';

/** A file of a mail can't be read as one. */
export const mailUnreadable = defineFinding({
  code: 'mail-unreadable',
  severity: 'fault',
  title: 'A mail cannot be read.',
  rationale: 'What was sent in it has not arrived, and whoever sent it thinks that it has.',
});

/** An attachment can't be got at. */
export const mailAttachment = defineFinding({
  code: 'mail-attachment',
  severity: 'fault',
  title: 'An attachment of a mail cannot be taken out.',
  rationale:
    'A hole that was mailed and left out without a word would be logged on without what camp changed.',
});
