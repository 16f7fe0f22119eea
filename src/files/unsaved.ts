import { join, resolve } from 'node:path';
import { hashText } from '../record/hash.ts';
import { type Disk, isMissing } from './disk.ts';
import { formatLine, parseLine, type WorkLine } from './journal-line.ts';
import { readProjectFile } from './read-file.ts';
import { DOCUMENT_LIMITS } from './read-json.ts';
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

/** What one file of kept edits holds: those that are sound, in the order they were made, and what can't be read of it. */
export interface Unsaved {
  readonly file: string;
  readonly lines: readonly WorkLine[];
  /** Lines that are no edit, as they stand there. */
  readonly damaged: readonly string[];
  /** Why nothing of it can be read. */
  readonly problem?: string;
}

/** Edits that were kept for a project, by file; none where nothing was. One file that can't be read hides no other. */
export async function readUnsaved(disk: Disk, folder: string, project: string): Promise<readonly Unsaved[]> {
  const names = await disk.list(folder).catch((error: unknown) => {
    if (isMissing(error)) return [];
    throw error;
  });
  const found: Unsaved[] = [];
  for (const name of names.filter(
    (each) => each.startsWith(`${nameFor(project)}.`) && each.endsWith('.jsonl'),
  )) {
    const file = join(folder, name);
    const bytes = await readProjectFile(disk, folder, name, DOCUMENT_LIMITS);
    found.push(
      bytes.ok
        ? { file, ...linesIn(bytes.value) }
        : { file, lines: [], damaged: [], problem: bytes.findings[0]?.problem ?? 'it can’t be read' },
    );
  }
  return found.sort((a, b) => (a.lines[0]?.seq ?? 0) - (b.lines[0]?.seq ?? 0));
}

/** Keeps what could not be put in, and takes away the file that it came in: what is in the log can't be put in twice. */
export async function keepLeft(
  disk: Disk,
  file: string,
  lines: readonly WorkLine[],
  damaged: readonly string[],
  token: string,
): Promise<string> {
  const left = file.replace(/\.[^.]*\.jsonl$/, `.${token}.jsonl`);
  const text = [...lines.map((line) => formatLine(line)), ...damaged.map((each) => `${each}\n`)].join('');
  await createDurably(disk, left, utf8.encode(text));
  await disk.unlink(file);
  return left;
}

function linesIn(bytes: Uint8Array): Pick<Unsaved, 'lines' | 'damaged'> {
  const lines: WorkLine[] = [];
  const damaged: string[] = [];
  for (let start = 0; start < bytes.length; ) {
    const feed = bytes.indexOf(0x0a, start);
    const end = feed < 0 ? bytes.length : feed;
    const line = feed < 0 ? undefined : parseLine(bytes.subarray(start, feed));
    if (line !== undefined && !('begins' in line)) lines.push(line);
    else if (end > start) damaged.push(new TextDecoder().decode(bytes.subarray(start, end)));
    start = end + 1;
  }
  return { lines, damaged };
}
