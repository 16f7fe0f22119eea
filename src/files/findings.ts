import { defineFinding } from '../finding/finding.ts';

/** A file can't be read at all. */
export const unreadableFile = defineFinding({
  code: 'unreadable-file',
  severity: 'fault',
  title: 'A file of the project cannot be read',
  rationale: 'What the disk does not give back cannot be logged on, checked or sent.',
});

/** A file's text is not JSON as offsider accepts it. */
export const notJson = defineFinding({
  code: 'not-json',
  severity: 'fault',
  title: 'A file is not well-formed JSON',
  rationale: 'A comma too many hides everything below it; guessing what was meant would invent data.',
});

/** A file's JSON would be read differently by different programs, or only in part. */
export const unsafeJson = defineFinding({
  code: 'unsafe-json',
  severity: 'fault',
  title: 'A file holds JSON that does not read the same everywhere',
  rationale: 'A name given twice, a number that rounds or a reserved name would change data silently.',
});

/** JSON that does not have the shape of its kind of file. */
export const wrongShape = defineFinding({
  code: 'wrong-shape',
  severity: 'fault',
  title: 'A file has not the shape of its kind',
  rationale:
    'A field that is missing, misspelt or of another kind would be lost or taken for something else.',
});

/** Written by a later offsider. */
export const newerFormat = defineFinding({
  code: 'newer-format',
  severity: 'fault',
  title: 'A file was written by a later version',
  rationale: 'An older version would drop what it does not know.',
});

/** Upgraded from an older format. */
export const olderFormat = defineFinding({
  code: 'older-format',
  severity: 'note',
  title: 'A file of an older format was brought up to date',
  rationale: 'The original is kept, so that nothing rests on the upgrade being right.',
});

/** Something in a folder of the project that is none of its files. */
export const foreignFile = defineFinding({
  code: 'foreign-file',
  severity: 'warning',
  title: 'There is a file in the project that offsider did not make',
  rationale: 'A copy renamed by hand or by a sync program holds rows that no one sees.',
});

/** A link that leads out of the project. */
export const linkOutside = defineFinding({
  code: 'link-outside',
  severity: 'fault',
  title: 'A link in the project leads out of it',
  rationale: 'Following it would read or overwrite files that are no part of the project.',
});

/** A document that was there before and is not now. */
export const missingFile = defineFinding({
  code: 'missing-file',
  severity: 'fault',
  title: 'A file that the journal knows is missing',
  rationale: 'A missing log taken for a new hole would be logged over.',
});

/** A document's file that lacks what the journal saw in it before. */
export const rolledBack = defineFinding({
  code: 'file-rolled-back',
  severity: 'fault',
  title: 'A file is older than what was saved in it',
  rationale: 'A backup or a sync program put an older copy in its place: rows shown as saved are not in it.',
});

/** The same, and the journal still had what it lacked. */
export const broughtForward = defineFinding({
  code: 'rolled-back-and-restored',
  severity: 'warning',
  title: 'An older copy was laid over a file, and what it lacked was put back from the journal',
  rationale: 'Nothing is lost this time; whatever lays older copies over files will do it again.',
});

/** The hash chain of a history is broken. */
export const brokenHistory = defineFinding({
  code: 'broken-history',
  severity: 'fault',
  title: 'A history has been changed',
  rationale: 'Who logged what and when can no longer be shown.',
});

/** The tables differ from the history. */
export const editedOutside = defineFinding({
  code: 'edited-outside',
  severity: 'warning',
  title: 'A file was edited by another program',
  rationale: 'The change is kept and marked in the history, so that it can be seen, and taken back.',
});

/** A document's file that nears what is read again. */
export const fileNearsLimit = defineFinding({
  code: 'file-nears-limit',
  severity: 'warning',
  title: 'A file nears the size that can be read',
  rationale: 'Past that size the next opening refuses it, as it refuses any file made to keep it busy.',
});

/** A document's file that could not be read again, and so is not written. */
export const fileNotWritten = defineFinding({
  code: 'file-too-large-to-write',
  severity: 'fault',
  title: 'A file would be too large to be read again and is not written',
  rationale: 'A file that is written and then refused would take every row in it out of reach.',
});

/** What was being written when the power or the program went. */
export const tornTail = defineFinding({
  code: 'torn-tail',
  severity: 'note',
  title: 'The journal ends in a line that was never finished',
  rationale: 'It was never shown as saved; it is kept aside so that nothing typed is thrown away unseen.',
});

/** Damage in the journal, among lines that had been saved. */
export const damagedJournal = defineFinding({
  code: 'damaged-journal',
  severity: 'fault',
  title: 'A saved line of the journal is damaged or gone',
  rationale: 'An edit that was shown as saved cannot be read back.',
});

/** Journal and file of a document do not fit together. */
export const journalMisfit = defineFinding({
  code: 'journal-misfit',
  severity: 'fault',
  title: 'The journal does not follow on from the file',
  rationale: 'The file is another copy or an older one: edits shown as saved are not in it.',
});

/** Edits that the journal holds and the file of a document does not yet. */
export const journalAhead = defineFinding({
  code: 'journal-ahead',
  severity: 'note',
  title: 'The journal was ahead of a file',
  rationale:
    'The program or the power went between saving a row and writing the file: nothing of it is lost.',
});

/** A copy found in the place of a document that can be neither taken in nor merged. */
export const copyRefused = defineFinding({
  code: 'copy-refused',
  severity: 'warning',
  title: 'A copy laid over a file could not be taken in',
  rationale:
    'It is another document with the same name; ours is kept, and the copy is put aside for you to look at.',
});

/** A file rebuilt whole from the journal. */
export const rebuilt = defineFinding({
  code: 'rebuilt-from-journal',
  severity: 'warning',
  title: 'A file could not be read and was rebuilt from the journal',
  rationale: 'Everything shown as saved is there; the broken file is kept to be looked at.',
});

/** Another copy of a document was laid over ours and the two were merged. */
export const copiesMerged = defineFinding({
  code: 'copies-merged',
  severity: 'warning',
  title: 'Two copies of a document were merged',
  rationale:
    'Both were edited since they parted; where both changed the same cell ours is kept until someone settles it.',
});

/** Someone else holds the project. */
export const projectInUse = defineFinding({
  code: 'project-in-use',
  severity: 'fault',
  title: 'Another console holds the project',
  rationale: 'Two writers would each overwrite what the other saved.',
});

/** The lock of a console that is gone was taken over. */
export const staleLock = defineFinding({
  code: 'stale-lock',
  severity: 'note',
  title: 'The last console ended without closing the project',
  rationale: 'A crash or a flat battery; every row shown as saved is in the journal.',
});

/** The lock of a console that may be open was taken over. */
export const lockTaken = defineFinding({
  code: 'lock-taken',
  severity: 'warning',
  title: 'The project was taken over from a console that may still be open',
  rationale: 'Whoever sits there goes on typing rows that are not saved any more.',
});

/** Edits that an earlier console could not save and kept on another disk. */
export const unsavedFound = defineFinding({
  code: 'unsaved-put-in',
  severity: 'warning',
  title: 'Edits that an earlier console could not save wait, or are put in',
  rationale: 'They were never shown as saved: whoever typed them may have typed them again.',
});

/** Files of a project that work has moved away from and that were not taken along. */
export const leftBehind = defineFinding({
  code: 'left-behind',
  severity: 'warning',
  title: 'A file was not taken along to the other folder',
  rationale: 'Work goes on in the other folder; what is only in the old one is easily forgotten there.',
});

/** No project, or none that can be written. */
export const noProject = defineFinding({
  code: 'no-project',
  severity: 'fault',
  title: 'There is no project here, or it cannot be written',
  rationale: 'Rows that cannot be saved must not look as if they were.',
});
