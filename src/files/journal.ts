import { basename, join } from 'node:path';
import type { Finding } from '../finding/finding.ts';
import type { Disk, OpenFile } from './disk.ts';
import { isMissing } from './disk.ts';
import { unreadableFile } from './findings.ts';
import { type BeginLine, type JournalLine, parseLine, type WorkLine } from './journal-line.ts';
import { FileRefused, readProjectFile } from './read-file.ts';
import type { JsonLimits } from './read-json.ts';
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

/** A generation holds what was taken in since the last files were written: hundreds of holes that arrived at once, at most. */
const LIMITS: JsonLimits = { bytes: 512 * 1024 * 1024, depth: 64 };

/** Generations that no file needs any more are kept for a while: with them a file that something rolled back is brought up to date again. */
const MOST_PAST = 1000;
const LARGEST_PAST = 1024 * 1024;
const PAST = '.past';
const pastPath = (generation: number): string => `${generationFile(generation)}${PAST}`;

/** The number of a generation that was set aside; undefined for any other name. */
export function pastOf(name: string): number | undefined {
  return name.endsWith(PAST) ? generationOf(name.slice(0, -PAST.length)) : undefined;
}

/** A generation as read: its good lines, and what is broken. */
export interface Generation {
  readonly generation: number;
  readonly begin: BeginLine | undefined;
  readonly lines: readonly WorkLine[];
  /** What was being written when the power or the program went: from this line on nothing was ever called saved. */
  readonly torn?: { readonly line: number; readonly bytes: Uint8Array };
  /** Stretches (their first line, counted from 1, and how many) that can't be read although later ones were saved: damage. */
  readonly damaged: readonly { readonly line: number; readonly lines: number }[];
}

/** A line, or a run of lines one after the other that can't be read; `number` counts lines from 1. */
type Piece = {
  readonly number: number;
  readonly lines: number;
  readonly start: number;
  readonly line: JournalLine | undefined;
};

/** So many lines that can't be read and the file is refused: it is not a journal, and going through it would keep the person waiting. */
const MOST_BROKEN = 10_000;

/**
 * Reads one generation's bytes. A broken stretch is a torn tail unless a later line says that it had been saved. Throws FileRefused for a file
 * that holds nothing of a journal but line feeds.
 */
export function readGeneration(generation: number, bytes: Uint8Array): Generation {
  const pieces = splitLines(bytes, generationFile(generation));
  const tornAt = firstTorn(pieces);
  const kept = tornAt < 0 ? pieces : pieces.slice(0, tornAt);
  const torn = tornAt < 0 ? undefined : pieces[tornAt];
  const good = kept.flatMap((piece) => (piece.line === undefined ? [] : [piece.line]));
  return {
    generation,
    begin: good.find((line): line is BeginLine => 'begins' in line),
    lines: good.filter((line): line is WorkLine => !('begins' in line)),
    ...(torn === undefined ? {} : { torn: { line: torn.number, bytes: bytes.subarray(torn.start) } }),
    damaged: kept.flatMap(({ line, number, lines }) => (line === undefined ? [{ line: number, lines }] : [])),
  };
}

function splitLines(bytes: Uint8Array, file: string): readonly Piece[] {
  const pieces: Piece[] = [];
  let number = 1;
  let broken = 0;
  for (let start = 0; start < bytes.length; number += 1) {
    const feed = bytes.indexOf(0x0a, start);
    const line = feed < 0 ? undefined : parseLine(bytes.subarray(start, feed));
    const last = pieces.at(-1);
    if (line === undefined && last !== undefined && last.line === undefined)
      pieces[pieces.length - 1] = { ...last, lines: last.lines + 1 };
    else pieces.push({ number, lines: 1, start, line });
    if (line === undefined) broken += 1;
    if (broken > MOST_BROKEN) throw new FileRefused([noJournal(file)]);
    start = feed < 0 ? bytes.length : feed + 1;
  }
  return pieces;
}

function noJournal(file: string): Finding {
  return unreadableFile.at(
    { file },
    {
      problem: `more than ${MOST_BROKEN} lines of it are not what a journal holds`,
      remedy:
        'Put back the file that was there. If it never was one of ours, move it out of the project. Nothing was changed.',
    },
  );
}

/**
 * The first broken stretch that no later line calls saved; -1 where there is none. A line is only ever written after every line before it, so a
 * later line's `safe` tells whether this one was saved.
 */
function firstTorn(pieces: readonly Piece[]): number {
  // The highest `safe` of the lines after each piece.
  const safeAfter: number[] = new Array(pieces.length).fill(-1);
  for (let index = pieces.length - 2; index >= 0; index -= 1) {
    const next = pieces[index + 1]?.line;
    const safe = next === undefined || 'begins' in next ? -1 : next.safe;
    safeAfter[index] = Math.max(safeAfter[index + 1] ?? -1, safe);
  }
  let lost = 0;
  return pieces.findIndex(({ line }, index) => {
    if (line === undefined) return (safeAfter[index] ?? -1) < lost;
    lost = 'begins' in line ? line.begins.next : line.seq + 1;
    return false;
  });
}

/** The generations of a project that are there, oldest first; none where there is no journal yet. */
export async function listGenerations(disk: Disk, folder: string): Promise<readonly number[]> {
  const names = await disk.list(join(folder, JOURNAL_FOLDER)).catch((error: unknown) => {
    if (isMissing(error)) return [];
    throw error;
  });
  return names.flatMap((name) => generationOf(name) ?? []).sort((a, b) => a - b);
}

/** Reads every generation of a project, oldest first. Throws FileRefused where one can't be read. */
export async function readJournal(disk: Disk, folder: string): Promise<readonly Generation[]> {
  const generations: Generation[] = [];
  for (const number of await listGenerations(disk, folder)) {
    const bytes = await readProjectFile(disk, folder, generationFile(number), LIMITS);
    // A generation may hold rows that were called saved: without it nothing of the project can be trusted to be whole.
    if (!bytes.ok) throw new FileRefused(bytes.findings);
    generations.push(readGeneration(number, bytes.value));
  }
  return generations;
}

/** The generations that were kept when no file needed them any more, oldest first. Any that can't be read is left out: they are no part of the project. */
export async function readPast(disk: Disk, folder: string): Promise<readonly Generation[]> {
  const generations: Generation[] = [];
  for (const number of await pastGenerations(disk, folder)) {
    try {
      const bytes = await readProjectFile(disk, folder, pastPath(number), LIMITS);
      if (bytes.ok) generations.push(readGeneration(number, bytes.value));
    } catch (error) {
      if (!(error instanceof FileRefused)) throw error;
    }
  }
  return generations;
}

async function pastGenerations(disk: Disk, folder: string): Promise<readonly number[]> {
  const names = await disk.list(join(folder, JOURNAL_FOLDER)).catch((error: unknown) => {
    if (isMissing(error)) return [];
    throw error;
  });
  return names.flatMap((name) => pastOf(name) ?? []).sort((a, b) => a - b);
}

/** Deletes what was kept of the journal beyond the last generations: some days of work. */
export async function dropOldPast(disk: Disk, folder: string): Promise<void> {
  for (const number of (await pastGenerations(disk, folder)).slice(0, -MOST_PAST))
    await disk.unlink(join(folder, pastPath(number)));
}

/**
 * Sets the generations before `current` aside, oldest first, once no line of theirs is needed any more. Those that hold
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
    else if ((await disk.facts(path)).size > LARGEST_PAST) await disk.unlink(path);
    else await disk.rename(path, join(folder, pastPath(number)));
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
  // A row in a file that the next opening passes over would be called saved and be lost.
  if (generationOf(basename(path)) !== generation)
    throw new Error(`the journal can't go on from generation ${generation - 1}: its numbers are used up`);
  const bytes = utf8.encode(text);
  const file = await disk.create(path);
  try {
    await writeAll(file, bytes);
    await file.sync();
    await disk.syncFolder(join(folder, JOURNAL_FOLDER));
    const found = await disk.readFile(path, bytes.length);
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
