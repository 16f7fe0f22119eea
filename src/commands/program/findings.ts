import { defineFinding } from '../../finding/finding.ts';

/** A program file that can't be read as a table at all. */
export const programUnreadable = defineFinding({
  code: 'program-unreadable',
  severity: 'fault',
  title: 'The program of planned holes cannot be read as a table.',
  rationale: 'Half a program taken in looks like a whole one.',
});

/** A line of the program that makes no sound hole. */
export const programLine = defineFinding({
  code: 'program-line',
  severity: 'fault',
  title: 'A line of the program makes no sound hole.',
  rationale: 'A slip in a planned direction or position is drilled before anybody sees it.',
});

/** Every kind of finding that reading a program raises beside those of collars. */
export const PROGRAM_FINDING_KINDS = [programUnreadable, programLine] as const;
