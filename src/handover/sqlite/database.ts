import { PAGE, type Pages, writeIndex, writeTable } from './pages.ts';
import { record, type SqlValue } from './record.ts';

/** A table of a database: its definition, and its rows. A row of a table with an INTEGER PRIMARY KEY has null in that place. */
export interface SqlTable {
  readonly name: string;
  /** The CREATE TABLE statement. */
  readonly sql: string;
  readonly rows: readonly (readonly SqlValue[])[];
  /** Numbers of the rows where they are not 1, 2, 3: of a table whose INTEGER PRIMARY KEY says so. In order. */
  readonly rowids?: readonly number[];
  /** Places of the texts in each key that the definition declares besides INTEGER PRIMARY KEY, in the order in which it declares them. */
  readonly keys?: readonly (readonly number[])[];
}

/** What the head of a database says of what is in it. */
export interface DatabaseHead {
  readonly applicationId: number;
  readonly userVersion: number;
}

/**
 * A database file with these tables and nothing else: no free pages, no journal. The same tables give the same bytes. Written by ourselves:
 * the engine compiled for JavaScript is 700 kB that every start of the console would carry, and only writing is needed. Source: SQLite
 * file format (sqlite.org/fileformat2.html); tests read it with that engine, its own check of integrity among them.
 */
export function databaseFile(
  { applicationId, userVersion }: DatabaseHead,
  tables: readonly SqlTable[],
): Uint8Array {
  const pages: Pages = [new Uint8Array(PAGE)];
  const schema = tables.flatMap((table) => schemaRows(pages, table));
  writeTable(
    pages,
    schema.map((row, index) => ({ rowid: index + 1, record: record(row) })),
    1,
  );
  const file = new Uint8Array(pages.length * PAGE);
  pages.forEach((page, index) => {
    file.set(page, index * PAGE);
  });
  writeHead(file, pages.length, { applicationId, userVersion });
  return file;
}

/** Writes a table with its indexes; gives what the schema says of them. */
function schemaRows(
  pages: Pages,
  { name, sql, rows, rowids, keys = [] }: SqlTable,
): readonly (readonly SqlValue[])[] {
  const numbered = rows.map((row, index) => ({ rowid: rowids?.[index] ?? index + 1, record: record(row) }));
  const table = ['table', name, name, { integer: writeTable(pages, numbered) }, sql] as const;
  const indexes = keys.map((places, index) => {
    const entries = rows
      .map((row, at) => ({ texts: places.map((place) => String(row[place])), rowid: numbered[at]!.rowid }))
      .sort((a, b) => compared(a.texts, b.texts));
    const page = writeIndex(
      pages,
      entries.map(({ texts, rowid }) => record([...texts, { integer: rowid }])),
    );
    return ['index', `sqlite_autoindex_${name}_${index + 1}`, name, { integer: page }, null] as const;
  });
  return [table, ...indexes];
}

/** Texts in the order of their code points, which of ASCII is that of SQLite. */
function compared(a: readonly string[], b: readonly string[]): number {
  const at = a.findIndex((each, index) => each !== b[index]);
  return at < 0 ? 0 : (a[at] ?? '') < (b[at] ?? '') ? -1 : 1;
}

/** The first hundred bytes. Source: SQLite file format, section 1.3. */
function writeHead(file: Uint8Array, pages: number, { applicationId, userVersion }: DatabaseHead): void {
  file.set(new TextEncoder().encode('SQLite format 3\0'));
  const view = new DataView(file.buffer);
  view.setUint16(16, PAGE);
  file.set([1, 1, 0, 64, 32, 32], 18);
  const words: readonly (readonly [at: number, value: number])[] = [
    [24, 1], // changes, and below the change that the version was true for
    [28, pages],
    [40, 1], // changes of the schema
    [44, 4], // format of the schema
    [56, 1], // UTF-8
    [60, userVersion],
    [68, applicationId],
    [92, 1],
    [96, 3_040_001], // a version that writes files like this one
  ];
  for (const [at, value] of words) view.setUint32(at, value);
}
