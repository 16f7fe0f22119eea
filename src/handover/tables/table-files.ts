import { contractPage } from './contract-page.ts';
import type { MadeTable } from './table.ts';
import { tableCsv } from './write-csv.ts';

/** A file of a folder of tables: its name there, with forward slashes, and its bytes. */
export interface TableFile {
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** The page that a folder of tables is known by: whatever is written into it later replaces only what was written before. */
export const TABLES_PAGE = 'TABLES.md';

const utf8 = (words: string): Uint8Array => new TextEncoder().encode(words);

/** The tables as CSV, one file each, with the page that says what is in them. */
export function csvFiles(project: string, tables: readonly MadeTable[]): readonly TableFile[] {
  return [
    {
      file: TABLES_PAGE,
      bytes: utf8(contractPage(tables, `Tables of ${project.replaceAll(/[\r\n]+/g, ' ')}`)),
    },
    ...tables.map((made) => ({ file: `${made.name}.csv`, bytes: utf8(tableCsv(made)) })),
  ];
}
