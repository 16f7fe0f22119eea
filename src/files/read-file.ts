import { join, sep } from 'node:path';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { type Disk, type FileFacts, isMissing, whyRefused } from './disk.ts';
import { linkOutside, unreadableFile } from './findings.ts';
import { type JsonLimits, tooLarge } from './read-json.ts';

/**
 * Reads a file of the project (`file` from its top, as findings name it). Refused: a file that is missing or can't be
 * read, one past the limit (before a byte of it is read), a link that leads out of the folder, and anything but a file.
 */
export async function readProjectFile(
  disk: Disk,
  folder: string,
  file: string,
  limits: JsonLimits,
): Promise<Result<Uint8Array>> {
  const path = join(folder, file);
  try {
    const outside = await leadsOutside(disk, folder, path);
    if (outside !== undefined) return refused(leadsOut(file, outside));
    const facts = await factsFollowed(disk, path);
    if (facts.kind !== 'file')
      return refused(unreadable(file, 'it is not a file', 'Move it away and put the file here.'));
    if (facts.size > limits.bytes) return refused(tooLarge(file, facts.size, limits));
    return ok(await disk.readFile(path));
  } catch (error) {
    const remedy = 'Put the file back, or give this user the right to read it.';
    return refused(unreadable(file, `it cannot be read: ${whyRefused(error)}`, remedy));
  }
}

function unreadable(file: string, problem: string, remedy: string): Finding {
  return unreadableFile.at({ file }, { problem, remedy: `${remedy} Nothing was changed.` });
}

function leadsOut(file: string, outside: string): Finding {
  return linkOutside.at(
    { file },
    {
      excerpt: `${file} → ${outside}`,
      problem: 'it is a link to a place outside the project',
      remedy: 'Put the file or folder itself here in its place. It was not followed.',
    },
  );
}

async function factsFollowed(disk: Disk, path: string): Promise<FileFacts> {
  const facts = await disk.facts(path);
  return facts.kind === 'link' ? disk.facts(await disk.realPath(path)) : facts;
}

/** The finding of the first of some folders of a project that is a link out of it; undefined where each is inside or not there. */
export async function folderOutside(
  disk: Disk,
  folder: string,
  rooms: readonly string[],
): Promise<Finding | undefined> {
  for (const room of rooms) {
    const outside = await leadsOutside(disk, folder, join(folder, room)).catch((error: unknown) => {
      // A file where a folder should be leads nowhere; whoever wants to write there is told.
      if (isMissing(error) || (error as NodeJS.ErrnoException).code === 'ENOTDIR') return undefined;
      throw error;
    });
    if (outside !== undefined) return leadsOut(room, outside);
  }
  return undefined;
}

/** The place outside the folder that a path really is at; undefined where it is inside. */
async function leadsOutside(disk: Disk, folder: string, path: string): Promise<string | undefined> {
  const top = await disk.realPath(folder);
  const real = await disk.realPath(path);
  return real === top || real.startsWith(top.endsWith(sep) ? top : top + sep) ? undefined : real;
}
