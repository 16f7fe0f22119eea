import { FINDING_KINDS_BY_ROOM } from '../src/check/finding-kinds.ts';
import { COMMAND_FINDING_KINDS } from '../src/commands/findings.ts';
import { noProjectHere } from '../src/desk/load-project.ts';
import { FILE_FINDINGS } from '../src/files/findings.ts';
import { HANDOVER_FINDINGS } from '../src/handover/findings.ts';
import { MAIL_FINDINGS } from '../src/mail/findings.ts';

/** Every kind of finding of the program with the room that raises it, from the lowest line up: those that check/ collects, and those of the rooms above it. */
export const EVERY_FINDING_KIND: typeof FINDING_KINDS_BY_ROOM = [
  ...FINDING_KINDS_BY_ROOM,
  ['handover', HANDOVER_FINDINGS],
  ['files', FILE_FINDINGS],
  ['mail', MAIL_FINDINGS],
  ['desk', [noProjectHere]],
  ['commands', COMMAND_FINDING_KINDS],
];
