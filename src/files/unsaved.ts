import { join, resolve } from 'node:path';
import { hashText } from '../record/hash.ts';
import { type Disk, isMissing } from './disk.ts';
import { formatLine, parseLine, type WorkLine } from './journal-line.ts';
import { createDurably, ensureFolder } from './write-durably.ts';

/**
 * Edits that a project's disk had not taken when its console was closed are kept on another one, in a folder of the person's own, under a
 * name made of the project's folder. The next opening on this computer finds them there.
 */
const nameFor = (project: string): string => `unsaved-${hashText(resolve(project)).slice(0, 16)}`;

const utf8 = new TextEncoder();

/** Keeps edits in `folder`, on the medium when this resolves; gives the file. Rejects where that disk does not take them either. */
export async function keepUnsaved(
  disk: Disk,
  folder: string,
  project: string,
  lines: readonly WorkLine[],
  token: string,
): Promise<string> {
  await ensureFolder(disk, folder);
  const file = join(folder, `${nameFor(project)}.${token}.jsonl`);
  await createDurably(disk, file, utf8.encode(lines.map((line) => formatLine(line)).join('')));
  return file;
}

/** Edits that were kept for a project, by file in the order they were made; none where nothing was, or where that folder can't be read. */
export async function readUnsaved(
  disk: Disk,
  folder: string,
  project: string,
): Promise<readonly { readonly file: string; readonly lines: readonly WorkLine[] }[]> {
  const names = await disk.list(folder).catch((error: unknown) => {
    if (isMissing(error)) return [];
    throw error;
  });
  const found: { file: string; lines: readonly WorkLine[] }[] = [];
  for (const name of names.filter(
    (each) => each.startsWith(`${nameFor(project)}.`) && each.endsWith('.jsonl'),
  )) {
    const file = join(folder, name);
    found.push({ file, lines: linesIn(await disk.readFile(file)) });
  }
  return found.sort((a, b) => (a.lines[0]?.seq ?? 0) - (b.lines[0]?.seq ?? 0));
}

function linesIn(bytes: Uint8Array): readonly WorkLine[] {
  const lines: WorkLine[] = [];
  for (let start = 0; start < bytes.length; ) {
    const feed = bytes.indexOf(0x0a, start);
    const line = feed < 0 ? undefined : parseLine(bytes.subarray(start, feed));
    if (line !== undefined && !('begins' in line)) lines.push(line);
    start = feed < 0 ? bytes.length : feed + 1;
  }
  return lines;
}
