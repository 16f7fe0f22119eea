import * as z from 'zod';
import { ok, type Result, refused } from '../finding/finding.ts';
import { acceptedIn } from '../hole/acceptance.ts';
import { HOLE_NOUNS, HOLE_SINCE_4 } from '../hole/hole.ts';
import { byReference } from '../record/by-reference.ts';
import type { Document, DocumentName, Thing } from '../record/document.ts';
import { isObject } from '../record/json.ts';
import { DISPATCH_NOUNS } from '../sampling/dispatch/dispatch-noun.ts';
import { RESULTS_NOUNS } from '../sampling/laboratory/results-noun.ts';
import { faultInWords } from '../schema/read/issue-words.ts';
import { SHIFT_NOUNS, SHIFT_SINCE_3 } from '../shift/shift.ts';
import { newerFormat, wrongShape } from './findings.ts';
import { holdToShape } from './json-shape.ts';
import type { JsonText } from './read-json.ts';
import { entryShape, tablesShape } from './record-shapes.ts';

/** The newest format that this version reads and writes: holes with the driller's word on metres, the quality of a GPS fix, a code that gives no chips, textures, a third rock, qualifiers or events. */
export const FORMAT = 4;

/** The format of shifts with timed plods, answers to queries and notes for the next crew. */
const SHIFTS_WITH_NOTES = 3;

/** The format in which merges hold the other copy's entries flat. */
const FLAT_MERGES = 2;

/** The oldest format that it reads as it is: a merge of that format holds the other copy's entries with their merges inside them. */
export const OLDEST_FORMAT = 1;

/** The format of a document's file: the oldest that holds what is in it, so that a laptop not yet updated reads all that it can. */
export function formatNeeded(document: Document): number {
  if (document.kind === 'hole' && holds(document, HOLE_SINCE_4)) return FORMAT;
  if (document.kind === 'shift' && holds(document, SHIFT_SINCE_3)) return SHIFTS_WITH_NOTES;
  if (acceptedIn(document).length > 0) return SHIFTS_WITH_NOTES;
  return document.history.some((entry) => entry.incoming !== undefined) ? FLAT_MERGES : OLDEST_FORMAT;
}

/** Whole tables, and fields of older ones, that came with a format. */
interface Since {
  readonly tables: readonly string[];
  readonly fields: Readonly<Record<string, readonly string[]>>;
  /** Members that a cell of a logged row has. */
  readonly cells?: readonly string[];
  /** Kinds of a field in the legend. A row need not hold a value of one: the legend has the field as soon as it is asked. */
  readonly kinds?: readonly string[];
}

/** True of a document that has something in it that came with a format. */
function holds({ tables }: Document, since: Since): boolean {
  const things = (table: string) => Object.values(tables[table] ?? {});
  return (
    since.tables.some((table) => things(table).length > 0) ||
    Object.entries(since.fields).some(([table, fields]) =>
      things(table).some((thing) => fields.some((field) => Object.hasOwn(thing, field))),
    ) ||
    things('legendFields').some(({ kind }) => since.kinds?.some((each) => each === kind)) ||
    things('rows').some((row) => hasNewerCell(since, row))
  );
}

/** Looked up once for a row: a file is written again after each rod. */
const hasNewerCell = byReference(
  (since: Since, { cells }: Thing): boolean =>
    isObject(cells) &&
    Object.values(cells).some((cell) => since.cells?.some((member) => Object.hasOwn(Object(cell), member))),
);

/** Where a snapshot is in the journal: it holds every edit up to `sequence`; `generation` was open when it was written. */
export interface JournalPosition {
  readonly generation: number;
  readonly sequence: number;
}

/** A document's file as it is stored. */
export interface StoredDocument {
  readonly document: Document;
  readonly position: JournalPosition;
}

/** A kind of document: its folder, its schema, what is in its tables, and the thing that it can't be without. */
interface DocumentKind {
  readonly folder: string;
  readonly schema: string;
  readonly nouns?: Readonly<Record<string, z.ZodType>>;
  readonly needs?: readonly [table: string, id: string];
}

/** The kinds of documents that a project keeps. */
export const DOCUMENT_KINDS: Readonly<Record<string, DocumentKind>> = {
  hole: {
    folder: 'holes',
    schema: '../schemas/hole.schema.json',
    nouns: HOLE_NOUNS,
    needs: ['hole', 'hole'],
  },
  shift: {
    folder: 'shifts',
    schema: '../schemas/shift.schema.json',
    nouns: SHIFT_NOUNS,
    needs: ['shift', 'shift'],
  },
  dispatch: {
    folder: 'dispatches',
    schema: '../schemas/dispatch.schema.json',
    nouns: DISPATCH_NOUNS,
    needs: ['dispatch', 'dispatch'],
  },
  results: {
    folder: 'results',
    schema: '../schemas/results.schema.json',
    nouns: RESULTS_NOUNS,
    needs: ['certificate', 'certificate'],
  },
};

/** The kind of that name; undefined for a name that is none of ours, one that every object inherits included. */
export function documentKind(name: string): DocumentKind | undefined {
  return Object.hasOwn(DOCUMENT_KINDS, name) ? DOCUMENT_KINDS[name] : undefined;
}

const POSITION_LIMIT = 2 ** 40;
const position = z.int().min(0).max(POSITION_LIMIT);

/** The shape of a document's file, whatever its kind. */
export const documentFileShape = z.strictObject({
  $schema: z.string(),
  format: z
    .literal([OLDEST_FORMAT, FLAT_MERGES, SHIFTS_WITH_NOTES, FORMAT])
    .describe(
      'Format of the file, the oldest that holds what is in it: 4 for a hole with the driller’s word on metres, the quality of a GPS fix, a code that gives no chips, textures without amounts, a third rock, qualifiers or events, accepted findings or a sign-off, or one that was imported, 3 for a shift with timed plods, answers to queries or a note for the next crew, and for any other file with accepted findings, 2 where a merge in its history holds entries flat, else 1',
    ),
  kind: z.string(),
  id: z.string().describe('Permanent id, the name of the file'),
  journal: z.strictObject({
    generation: position.describe('Generation of the journal that was open'),
    sequence: position.describe('Last edit of the journal that is in this file'),
  }),
  tables: tablesShape.describe('What is there now'),
  history: z
    .array(entryShape)
    .describe('How it came about, oldest first; each entry holds the hash of the one it follows'),
});

/** The file of a document, from the top of the project: `holes/ZQRC004.json`. Throws for a kind that has no files. */
export function documentPath(name: DocumentName): string {
  const kind = documentKind(name.kind);
  if (kind === undefined) throw new Error(`no files are kept for documents of kind ${name.kind}`);
  return `${kind.folder}/${name.id}.json`;
}

/** The format that a file says it has; undefined where it says none. */
export function formatOf(value: unknown): unknown {
  return typeof value === 'object' && value !== null && 'format' in value ? value.format : undefined;
}

/** Reads a document's file of today's format. Refused where it is newer, misshapen or says another name than its file's. */
export function readDocumentFile(json: JsonText, name: DocumentName): Result<StoredDocument> {
  const format = formatOf(json.value);
  if (typeof format === 'number' && format > FORMAT) return refused(newer(json.file, format));
  const held = holdToShape(json, documentFileShape);
  if (!held.ok) return held;
  const { kind, id, tables, history, journal } = held.value;
  if (kind !== name.kind || id !== name.id) {
    return refused(
      wrongShape.at(
        { file: json.file, field: 'id' },
        {
          excerpt: `${kind} ${id}`,
          problem: `the file says it is ${kind} ${id}, its name says ${name.kind} ${name.id}`,
          remedy: `Rename it to ${id}.json if that is free; a copy is taken in with receive. Nothing was changed.`,
        },
      ),
    );
  }
  const nouns = NOUN_SHAPES[name.kind];
  const fits = nouns === undefined ? held : holdToShape(json, nouns);
  if (!fits.ok) return fits;
  return ok({ document: { kind, id, tables, history } as Document, position: journal });
}

export function newer(file: string, format: number): ReturnType<typeof newerFormat.at> {
  return newerFormat.at(
    { file, field: 'format' },
    {
      excerpt: `"format": ${format}`,
      problem: `it has format ${format}; this offsider reads up to ${FORMAT}`,
      remedy: 'Open it with the newer offsider that wrote it. Nothing was changed.',
    },
  );
}

/** The shape of the tables of each kind that says what is in them, made once: making one is slower than using it. */
const NOUN_SHAPES: Readonly<Record<string, z.ZodType>> = Object.fromEntries(
  Object.entries(DOCUMENT_KINDS).flatMap(([name, kind]) =>
    kind.nouns === undefined ? [] : [[name, nounShape(kind.nouns, kind.needs)]],
  ),
);

function nounShape(nouns: Readonly<Record<string, z.ZodType>>, needs: DocumentKind['needs']): z.ZodType {
  const tables = z.strictObject(
    Object.fromEntries(
      Object.entries(nouns).map(([table, noun]) => [table, z.record(z.string(), noun).optional()]),
    ),
  );
  return z.looseObject({
    tables: tables.refine(
      (held) =>
        needs === undefined ||
        Object.keys(held).length === 0 ||
        Object.hasOwn(held[needs[0]] ?? {}, needs[1]),
      needs === undefined ? '' : `${needs.join('.')} is missing`,
    ),
  });
}

/**
 * Why things of a document would not read back from its file, in words; undefined where they would. An edit that fails
 * this is refused before it is saved: a file that can't be opened again is worse than a row that is not taken.
 */
export function documentFault(
  document: Document,
  touched: readonly (readonly [table: string, id: string])[],
): string | undefined {
  const kind = documentKind(document.kind);
  if (kind === undefined) return `no files are kept for documents of kind ${document.kind}`;
  const { nouns, needs } = kind;
  if (nouns === undefined) return undefined;
  for (const [table, id] of touched) {
    const thing = document.tables[table]?.[id];
    if (thing === undefined) continue;
    if (!Object.hasOwn(nouns, table)) return `a ${document.kind} has no table ${table}`;
    const fault = nouns[table]?.safeParse(thing, { reportInput: true }).error;
    if (fault !== undefined) return `${table} ${id}: ${faultInWords(fault)}`;
  }
  const stands = Object.keys(document.tables).length > 0;
  if (needs === undefined || !stands || document.tables[needs[0]]?.[needs[1]] !== undefined) return undefined;
  return `a ${document.kind} needs its ${needs.join('.')}`;
}
