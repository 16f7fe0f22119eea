import { defineFinding } from '../finding/finding.ts';

/** A command was given what it can't use. */
export const wrongUse = defineFinding({
  code: 'wrong-use',
  severity: 'fault',
  title: 'A command is given something that it cannot use.',
  rationale: 'Doing something near what was meant is worse than doing nothing.',
});

/** A hole was named that the project has not. */
export const holeUnknown = defineFinding({
  code: 'hole-unknown',
  severity: 'fault',
  title: 'The project has no hole of this name.',
  rationale: 'A slip in the name must not make a hole, nor write to another.',
});

/** A folder can't take a new project. */
export const folderTaken = defineFinding({
  code: 'folder-taken',
  severity: 'fault',
  title: 'A new project needs its own folder.',
  rationale: 'A project laid over other files hides them, or itself.',
});

/** A line of the shorthand that was not taken, or saved and marked. */
export const lineNotTaken = defineFinding({
  code: 'line-not-taken',
  severity: 'fault',
  title: 'A line from a pipe is not taken.',
  rationale: 'What comes after it may rest on it, so nothing is taken past it unasked.',
});

/** A line saved and marked, for a look. */
export const lineAsked = defineFinding({
  code: 'line-asked',
  severity: 'warning',
  title: 'A line from a pipe is saved and marked for a look.',
  rationale: 'In a pipe no one can be asked; the termination rules wait until someone has looked.',
});

/** A table that arrived can't be read. */
export const fileUnreadable = defineFinding({
  code: 'table-not-read',
  severity: 'fault',
  title: 'A table that arrived cannot be read.',
  rationale: 'Half an imported table looks like all of it.',
});

/** A program file that can't be read as a table at all. */
export const programUnreadable = defineFinding({
  code: 'program-unreadable',
  severity: 'fault',
  title: 'The program of planned holes cannot be read as a table.',
  rationale: 'Half an imported program looks like all of it.',
});

/** A line of the program that makes no sound hole. */
export const programLine = defineFinding({
  code: 'program-line',
  severity: 'fault',
  title: 'A line of the program makes no sound hole.',
  rationale: 'A slip in a planned direction or position is drilled before anybody sees it.',
});
