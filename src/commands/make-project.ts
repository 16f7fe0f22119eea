import { readdir, rm, rmdir, unlink } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { errorCode, whyRefused } from '../files/disk.ts';
import { DOCUMENT_KINDS } from '../files/document-file.ts';
import { JOURNAL_FOLDER } from '../files/journal.ts';
import { type MadeFiles, makeFiles } from '../files/make-files.ts';
import { realDisk } from '../files/real-disk.ts';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { folderTaken, wrongUse } from './findings.ts';

/** A file of a project that is made: its path in the folder, and what it says. */
interface NewFile {
  readonly file: string;
  readonly text: string;
}

/** Refused where the folder holds anything, or can't be looked into. */
export async function freeFolder(folder: string, said: string): Promise<Result<void>> {
  const taken = (problem: string, remedy: string) =>
    refused<never>(folderTaken.at({ file: said === '' ? 'the folder' : said }, { problem, remedy }));
  if (said.trim() === '')
    return taken('no name is given', 'Give the name of a folder that is not there yet.');
  if (/\p{Cc}/u.test(said) || basename(folder).startsWith('-'))
    return taken(
      'a folder of this name is hard to name again: it begins with a dash, or holds a line end or another character that no one can type',
      'Give a name of letters and figures.',
    );
  try {
    const inside = await readdir(folder);
    if (inside.length === 0) return ok(undefined);
    const isProject = inside.includes('project.json');
    return taken(
      isProject ? 'it holds a project already' : 'it is not empty',
      isProject ? `Open it: offsider ${said}` : 'Give the name of a folder that is not there yet.',
    );
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT') return ok(undefined);
    return taken(
      `it can't be used: ${whyRefused(error)}`,
      'Give the name of a folder that is not there yet.',
    );
  }
}

/**
 * Makes the folder of a project: the first file, by which two who do this at once are told apart, those between, and project.json last, for a folder
 * is a project from then on. Then `fill` puts in what belongs to it. Where a step fails, what this made is taken away again.
 */
export async function makeProject(
  folder: string,
  {
    first,
    more,
    last,
  }: { readonly first: NewFile; readonly more: readonly NewFile[]; readonly last: NewFile },
  fill: () => Promise<void>,
): Promise<Result<void>> {
  const made: Made = { folders: [], files: [], rooms: [] };
  try {
    await makeFiles(realDisk, folder, [first], made);
    for (const room of new Set(more.map(({ file }) => dirname(file)))) {
      const files = more.filter(({ file }) => dirname(file) === room);
      const named = files.map(({ file, text }) => ({ file: basename(file), text }));
      await makeFiles(realDisk, join(folder, room), named, made);
    }
    await makeFiles(realDisk, folder, [last], made);
    // From here on the folder is ours alone: whoever else makes a project here has failed on the first file.
    made.rooms = [JOURNAL_FOLDER, ...Object.values(DOCUMENT_KINDS).map((kind) => kind.folder)];
    await fill();
    return ok(undefined);
  } catch (error) {
    await takeBack(folder, made);
    if (errorCode(error) !== 'EEXIST') return refused(cannotMake(folder, whyRefused(error)));
    const problem = 'a project was made in it at this very moment';
    return refused(folderTaken.at({ file: folder }, { problem, remedy: `Open it: offsider ${folder}` }));
  }
}

type Made = { -readonly [Member in keyof MadeFiles]: MadeFiles[Member] } & { rooms: readonly string[] };

/** Takes away what this command made, and no folder that holds anything else. */
async function takeBack(folder: string, { files, folders, rooms }: Made): Promise<void> {
  for (const room of rooms) await rm(join(folder, room), { recursive: true, force: true }).catch(() => {});
  for (const path of [...files].reverse()) await unlink(path).catch(() => {});
  for (const path of [...folders].reverse()) await rmdir(path).catch(() => {});
}

function cannotMake(folder: string, why: string): Finding {
  return wrongUse.at(
    { file: folder },
    {
      problem: `the project can't be made: ${why}`,
      remedy: 'Give a folder where this user may write. Nothing was left behind.',
    },
  );
}
