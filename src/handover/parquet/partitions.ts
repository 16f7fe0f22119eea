import type { MadeTable } from '../tables/table.ts';
import type { TableFile } from '../tables/table-files.ts';
import { parquetFile } from './parquet-file.ts';

/** The folder of a table's partitions of one project, with forward slashes: whoever writes it joins its parts as the platform does. */
export function partitionFolder(project: string, table: string): string {
  return `parquet/${table}/project=${escaped(project)}`;
}

/**
 * The tables as Parquet, a file for each partition, made when it is asked for: so that no more than one is in memory. A table of holes has one a
 * hole, any other one file: `parquet/geology/project=Mulgara Bend/hole=MBRC001/part-0.parquet`. The names are those that SQL engines know as
 * Hive's, so that folders of many rigs laid together are one table. Tables without a row have no file.
 */
export function* parquetFiles(project: string, tables: readonly MadeTable[]): Generator<TableFile> {
  for (const made of tables) {
    const whole = partitionFolder(project, made.name);
    for (const [hole, rows] of byHole(made)) {
      const partition = hole === undefined ? whole : `${whole}/hole=${escaped(hole)}`;
      yield { file: `${partition}/part-0.parquet`, bytes: parquetFile({ ...made, rows }) };
    }
  }
}

/** Rows by their hole, where every row has one; else all together. */
function byHole({ columns, rows }: MadeTable): ReadonlyMap<string | undefined, MadeTable['rows']> {
  const at = Object.keys(columns).indexOf('hole');
  if (rows.length === 0) return new Map();
  if (at < 0 || columns.hole?.empty !== undefined) return new Map([[undefined, rows]]);
  const found = new Map<string | undefined, (readonly MadeTable['rows'][number][number][])[]>();
  for (const row of rows) {
    const hole = String(row[at]);
    const before = found.get(hole);
    if (before === undefined) found.set(hole, [row]);
    else before.push(row);
  }
  return found;
}

/** A value in a folder's name as Hive writes it: what a disk may not take, or a reader would take for something else, as % and two digits. */
function escaped(value: string): string {
  const bytes = new TextEncoder().encode(value.normalize('NFC'));
  return [...bytes]
    .map((byte) => {
      const letter = String.fromCharCode(byte);
      return /[A-Za-z0-9 _-]/.test(letter) ? letter : `%${byte.toString(16).toUpperCase().padStart(2, '0')}`;
    })
    .join('')
    .replace(/^ | $/g, '%20');
}
