import { join, sep } from 'node:path';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { type Disk, errorCode, isMissing, whyRefused } from './disk.ts';
import { linkOutside, unreadableFile } from './findings.ts';
import { type JsonLimits, tooLarge } from './read-json.ts';

/** Thrown where a file must be read before anything else can go on, with what to say of it. */
export class FileRefused extends Error {
  readonly findings: readonly Finding[];
  constructor(findings: readonly Finding[]) {
    super(findings.map((finding) => finding.problem).join('; '));
    this.findings = findings;
  }
}

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
  try {
    const { real, outside } = await placeOf(disk, folder, join(folder, file));
    return outside ? refused(leadsOut(file, real)) : ok(await disk.readFile(real, limits.bytes));
  } catch (error) {
    return refused(await refusalOf(error, file, limits, () => disk.facts(join(folder, file))));
  }
}

/**
 * Reads a file that a person named, wherever it is, under the same guard; a link to it is followed, because the person chose it. `limits` as
 * for a file of the project; findings name it as it was typed.
 */
export async function readNamedFile(
  disk: Disk,
  path: string,
  limits: JsonLimits,
  named = path,
): Promise<Result<Uint8Array>> {
  try {
    return ok(await disk.readFile(await disk.realPath(path), limits.bytes));
  } catch (error) {
    const facts = async () => disk.facts(await disk.realPath(path));
    return refused(await refusalOf(error, named, limits, facts, 'Give the name of a file.'));
  }
}

async function refusalOf(
  error: unknown,
  file: string,
  limits: JsonLimits,
  facts: () => Promise<{ readonly size: number }>,
  remedy?: string,
): Promise<Finding> {
  const code = errorCode(error);
  if (code === 'TOOLARGE') {
    const size = await facts().catch(() => ({ size: 0 }));
    return tooLarge(file, Math.max(size.size, limits.bytes + 1), limits);
  }
  if (code === 'NOTAFILE' || code === 'EISDIR')
    return unreadable(file, 'it is not a file', remedy ?? 'Move it away and put the file here.');
  return unreadable(
    file,
    `it can't be read: ${whyRefused(error)}`,
    remedy ?? 'Put the file back, or give this user the right to read it.',
  );
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

/** The finding of the first of some folders of a project that is a link out of it; undefined where each is inside or not there. */
export async function folderOutside(
  disk: Disk,
  folder: string,
  rooms: readonly string[],
): Promise<Finding | undefined> {
  for (const room of rooms) {
    const place = await placeOf(disk, folder, join(folder, room)).catch((error: unknown) => {
      // A file where a folder should be leads nowhere; whoever wants to write there is told.
      if (isMissing(error) || errorCode(error) === 'ENOTDIR') return undefined;
      throw error;
    });
    if (place?.outside === true) return leadsOut(room, place.real);
  }
  return undefined;
}

/** Where a path really is, and whether that is outside the folder. */
async function placeOf(
  disk: Disk,
  folder: string,
  path: string,
): Promise<{ readonly real: string; readonly outside: boolean }> {
  const top = await disk.realPath(folder);
  const real = await disk.realPath(path);
  return { real, outside: real !== top && !real.startsWith(top.endsWith(sep) ? top : top + sep) };
}
