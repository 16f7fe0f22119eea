import { FINDING_KINDS_BY_ROOM, kindsIn } from '../src/check/registry.ts';
import * as commands from '../src/commands/findings.ts';
import * as desk from '../src/desk/findings.ts';
import * as files from '../src/files/findings.ts';
import * as handover from '../src/handover/findings.ts';
import * as mail from '../src/mail/findings.ts';

/** Every kind of finding of the program with the room that raises it, from the lowest line up: those that check/ collects, and those of the rooms above it. */
export const EVERY_FINDING_KIND: typeof FINDING_KINDS_BY_ROOM = [
  ...FINDING_KINDS_BY_ROOM,
  ['handover', kindsIn(handover)],
  ['files', kindsIn(files)],
  ['mail', kindsIn(mail)],
  ['desk', kindsIn(desk)],
  ['commands', kindsIn(commands)],
];
