import { join } from 'node:path';
import type { Disk, OpenFile } from './disk.ts';
import { isMissing } from './disk.ts';
import { type BeginLine, type JournalLine, parseLine, type WorkLine } from './journal-line.ts';
import { writeAll } from './write-durably.ts';

/** The folder of the journal, and the file of a generation in it. */
export const JOURNAL_FOLDER = 'journal';
export function generationFile(generation: number): string {
  return `${JOURNAL_FOLDER}/${String(generation).padStart(6, '0')}.jsonl`;
}

/** The number of the generation that a file of the journal holds; undefined for a name of another kind. */
export function generationOf(name: string): number | undefined {
  const found = /^(\d{6,12})\.jsonl$/.exec(name)?.[1];
  return found === undefined ? undefined : Number(found);
}

/** A generation as read: its good lines, and what is broken. */
export interface Generation {
  readonly generation: number;
  readonly begin: BeginLine | undefined;
  readonly lines: readonly WorkLine[];
  /** What was being written when the power or the program went: from this line on nothing was ever called saved. */
  readonly torn?: { readonly line: number; readonly bytes: Uint8Array };
  /** Lines (counted from 1) that can't be read although later ones were saved: damage. */
  readonly damaged: readonly number[];
}

type Piece = { readonly number: number; readonly start: number; readonly line: JournalLine | undefined };

/** Reads one generation's bytes. A broken stretch is a torn tail unless a later line says that it had been saved. */
export function readGeneration(generation: number, bytes: Uint8Array): Generation {
  const pieces = splitLines(bytes);
  const tornAt = pieces.findIndex((piece, index) => piece.line === undefined && isTorn(pieces, index));
  const kept = tornAt < 0 ? pieces : pieces.slice(0, tornAt);
  const torn = tornAt < 0 ? undefined : pieces[tornAt];
  const good = kept.flatMap((piece) => (piece.line === undefined ? [] : [piece.line]));
  return {
    generation,
    begin: good.find((line): line is BeginLine => 'begins' in line),
    lines: good.filter((line): line is WorkLine => !('begins' in line)),
    ...(torn === undefined ? {} : { torn: { line: torn.number, bytes: bytes.subarray(torn.start) } }),
    damaged: kept.filter((piece) => piece.line === undefined).map((piece) => piece.number),
  };
}

function splitLines(bytes: Uint8Array): readonly Piece[] {
  const pieces: Piece[] = [];
  for (let start = 0; start < bytes.length; ) {
    const feed = bytes.indexOf(0x0a, start);
    const line = feed < 0 ? undefined : parseLine(bytes.subarray(start, feed));
    pieces.push({ number: pieces.length + 1, start, line });
    start = feed < 0 ? bytes.length : feed + 1;
  }
  return pieces;
}

/** A line is only ever written after every line before it, so a later line's `safe` tells whether this one was saved. */
function isTorn(pieces: readonly Piece[], index: number): boolean {
  const before = pieces.slice(0, index).flatMap((piece) => (piece.line === undefined ? [] : [piece.line]));
  const lastGood = before.at(-1);
  const lost = lastGood === undefined ? 0 : 'begins' in lastGood ? lastGood.begins.next : lastGood.seq + 1;
  return pieces
    .slice(index + 1)
    .every(({ line }) => line === undefined || 'begins' in line || line.safe < lost);
}

/** The generations of a project that are there, oldest first; none where there is no journal yet. */
export async function listGenerations(disk: Disk, folder: string): Promise<readonly number[]> {
  const names = await disk.list(join(folder, JOURNAL_FOLDER)).catch((error: unknown) => {
    if (isMissing(error)) return [];
    throw error;
  });
  return names.flatMap((name) => generationOf(name) ?? []).sort((a, b) => a - b);
}

/** Reads every generation of a project, oldest first. */
export async function readJournal(disk: Disk, folder: string): Promise<readonly Generation[]> {
  const generations: Generation[] = [];
  for (const number of await listGenerations(disk, folder)) {
    generations.push(readGeneration(number, await disk.readFile(join(folder, generationFile(number)))));
  }
  return generations;
}

/**
 * Drops the generations before `current`, oldest first, once no line of theirs is needed any more. Those that hold
 * damage are kept under another name, to be looked at.
 */
export async function retireGenerations(
  disk: Disk,
  folder: string,
  current: number,
  spoiled: ReadonlySet<number>,
): Promise<void> {
  for (const number of await listGenerations(disk, folder)) {
    if (number >= current) break;
    const path = join(folder, generationFile(number));
    if (spoiled.has(number)) await disk.rename(path, `${path}.damaged`);
    else await disk.unlink(path);
  }
  await disk.syncFolder(join(folder, JOURNAL_FOLDER));
}

/** A generation open for appending. After any rejection it must be abandoned: its descriptor is not to be trusted again. */
export interface JournalFile {
  readonly generation: number;
  /** Appends lines as one write; they are on the medium when this resolves. */
  append(text: string): Promise<void>;
  close(): Promise<void>;
}

const utf8 = new TextEncoder();

/**
 * Begins a generation under a number that is not taken, with its first lines, all on the medium and read back when
 * this resolves.
 */
export async function beginGeneration(
  disk: Disk,
  folder: string,
  generation: number,
  text: string,
): Promise<JournalFile> {
  const path = join(folder, generationFile(generation));
  const bytes = utf8.encode(text);
  const file = await disk.create(path);
  try {
    await writeAll(file, bytes);
    await file.sync();
    await disk.syncFolder(join(folder, JOURNAL_FOLDER));
    const found = await disk.readFile(path);
    if (!sameBytes(found, bytes)) throw new Error('what was written does not read back the same');
  } catch (error) {
    await file.close().catch(() => {});
    throw error;
  }
  return journalFile(generation, file);
}

function journalFile(generation: number, file: OpenFile): JournalFile {
  return {
    generation,
    append: async (text) => {
      await writeAll(file, utf8.encode(text));
      await file.sync();
    },
    close: () => file.close(),
  };
}

/** True where two runs of bytes are the same. */
export function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, index) => byte === b[index]);
}
