import * as z from 'zod';
import { everyEntry } from '../record/ancestry.ts';
import { crcText } from '../record/crc32.ts';
import type { DocumentName, Edit, Entry } from '../record/document.ts';
import type { Json } from '../record/json.ts';
import { faultInWords } from '../schema/read/issue-words.ts';
import { accepts } from './accepts.ts';
import { DOCUMENT_LIMITS, jsonFault } from './read-json.ts';
import { changeShape, deedShape, entryShape, nameShape } from './record-shapes.ts';

/** Where a line's work hangs in one document's history: the hash it follows (empty: it is the first) and the hash it gives. */
export interface Link {
  readonly onto: string;
  readonly makes: string;
}

/** An edit; `links` stand in the order of its parts. */
export interface EditLine {
  readonly seq: number;
  readonly safe: number;
  readonly links: readonly Link[];
  readonly edit: Edit;
}

/** Entries that a document takes over as they are: another copy's, a merge, a change found in the file. */
interface AdoptLine {
  readonly seq: number;
  readonly safe: number;
  readonly links: readonly Link[];
  readonly adopt: { readonly document: DocumentName; readonly entries: readonly Entry[] };
}

/** A document whose file is gone, given up knowingly: who, when and why. From there on it is not asked for any more. */
export interface LetGo {
  readonly document: DocumentName;
  readonly at: string;
  readonly by: string;
  readonly why: string;
}

/** The line that lets a document go; it hangs in no history, for there is none. */
interface LetGoLine {
  readonly seq: number;
  readonly safe: number;
  readonly links: readonly Link[];
  readonly letGo: LetGo;
}

/** A line that changes documents. `safe` is the last sequence of its file known to be on the medium when it was written. */
export type WorkLine = EditLine | AdoptLine | LetGoLine;

/**
 * The first line of a generation. A generation holds every line that no snapshot holds, so with the snapshots it is the
 * whole project; `next` is the first sequence that may stand in it.
 */
export interface BeginLine {
  readonly begins: {
    readonly generation: number;
    readonly next: number;
    /** Keys of the documents of the project: one that is not found again is missing, not new. */
    readonly documents: readonly string[];
    /** Every document that was ever let go, oldest first; left out where none was. */
    readonly letGo?: readonly LetGo[];
    /**
     * The last entry of each document's history when the generation began, by the document's key, as {@link headOf} shortens its hash. A file that
     * was rolled back since does not hold it: no file can roll this back with it. Left out by older versions.
     */
    readonly heads?: Readonly<Record<string, string>>;
  };
}

export type JournalLine = WorkLine | BeginLine;

/** Past this a number is none that a journal of ours gave. Documents' files hold it too. */
const MOST_COUNTED = 2 ** 40;
const count = z.int().min(0).max(MOST_COUNTED);
const linksShape = z.array(z.strictObject({ onto: z.string(), makes: z.string() }));
const editShape = z.strictObject({
  ...deedShape,
  parts: z.array(z.strictObject({ document: nameShape, changes: z.array(changeShape) })),
});
const letGoShape = z.strictObject({
  document: nameShape,
  at: z.string(),
  by: z.string(),
  why: z.string().max(2000),
});
const lineShape = z.union([
  z.strictObject({ seq: count, safe: count, links: linksShape, edit: editShape }),
  z.strictObject({
    seq: count,
    safe: count,
    links: linksShape,
    adopt: z.strictObject({ document: nameShape, entries: z.array(entryShape) }),
  }),
  z.strictObject({ seq: count, safe: count, links: linksShape, letGo: letGoShape }),
  z.strictObject({
    begins: z.strictObject({
      generation: count,
      next: count,
      documents: z.array(z.string()),
      letGo: z.array(letGoShape).optional(),
      heads: z.record(z.string(), z.string().max(64)).optional(),
    }),
  }),
]);

/** So much of a hash tells two entries of one history apart: every generation says it of every document. */
const HEAD_LENGTH = 20;

/** The end of a history, to be found again in a later one; undefined for a history without entries. */
export function headOf(history: readonly Entry[]): string | undefined {
  return history.at(-1)?.hash.slice(0, HEAD_LENGTH);
}

/** True of a history that holds the entry that {@link headOf} gave, merged in included. */
export function holdsHead(history: readonly Entry[], head: string): boolean {
  return headOf(history) === head || everyEntry(history).some(({ hash }) => hash.startsWith(head));
}

const utf8 = new TextEncoder();
const PREFIX = '{"crc":"';
const PREFIX_LENGTH = PREFIX.length + 8 + 2;

/** A line as it is in the file, its line feed included: the CRC-32 is of every byte between its comma and the line feed. */
export function formatLine(line: JournalLine): string {
  if ('seq' in line && line.seq > MOST_COUNTED)
    throw new Error('the journal has no number left for another edit');
  const rest = JSON.stringify(line).slice(1);
  return `${PREFIX}${crcText(utf8.encode(rest))}",${rest}\n`;
}

/** A line read back (without its line feed); undefined where a byte of it is not what was written. */
export function parseLine(bytes: Uint8Array): JournalLine | undefined {
  const head = String.fromCharCode(...bytes.subarray(0, PREFIX_LENGTH));
  if (!/^\{"crc":"[0-9a-f]{8}",$/.test(head)) return undefined;
  const rest = bytes.subarray(PREFIX_LENGTH);
  if (head.slice(PREFIX.length, PREFIX.length + 8) !== crcText(rest)) return undefined;
  try {
    const value: unknown = JSON.parse(`{${new TextDecoder('utf-8', { fatal: true }).decode(rest)}`);
    return accepts(lineShape)(value) ? (value as JournalLine) : undefined;
  } catch {
    return undefined;
  }
}

/**
 * Why a line would not read back from the journal, or its work from a document's file, in words; undefined where both
 * would. The line must be plain JSON already.
 */
export function lineFault(line: JournalLine): string | undefined {
  const fault = jsonFault(line as unknown as Json, DOCUMENT_LIMITS.depth - DEPTH_AROUND);
  if (fault !== undefined) return fault;
  if (accepts(lineShape)(line)) return undefined;
  const refused = lineShape.safeParse(line, { reportInput: true }).error;
  return refused === undefined ? undefined : faultInWords(refused);
}

/** A document's file and a merge lay more around a thing than the journal does. */
const DEPTH_AROUND = 16;

/** The documents that a line changes, in the order of its links. */
export function documentsOf(line: WorkLine): readonly DocumentName[] {
  if ('edit' in line) return line.edit.parts.map((part) => part.document);
  return ['adopt' in line ? line.adopt.document : line.letGo.document];
}
