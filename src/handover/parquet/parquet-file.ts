import { ByteWriter, parquetWrite } from 'hyparquet-writer/src/index.js';
import { instantMs, offsetMin, type Stamp } from '../../quantity/stamp.ts';
import type { Column, Value } from '../tables/column.ts';
import type { MadeTable } from '../tables/table.ts';

/** Rows of a row group: a reader of one hole among many reads no more than that at a time. */
const GROUP_ROWS = 20_000;

/** One column as Parquet has it: its name, how it is stored, and its values. */
interface StoredColumn {
  readonly name: string;
  readonly element: Readonly<Record<string, unknown>>;
  readonly data: unknown[];
}

/**
 * A table as a Parquet file: columns typed, empty cells null, those that are never empty required. An instant is two columns: UTC in
 * milliseconds, and the minutes that the clock that stamped it was ahead (`<name>_offset_min`). The same table gives the same bytes.
 */
export function parquetFile({ name, table, columns, rows }: MadeTable): Uint8Array {
  const stored = Object.entries(columns).flatMap(([column, declared], index) =>
    storedColumns(
      column,
      declared,
      rows.map((row) => row[index]),
    ),
  );
  const writer = new ByteWriter();
  void parquetWrite({
    writer,
    columnData: stored.map(({ name: column, data }) => ({ name: column, data })),
    schema: [{ name: 'root', num_children: stored.length }, ...stored.map(({ element }) => element as never)],
    rowGroupSize: GROUP_ROWS,
    createdBy: 'offsider',
    kvMetadata: [
      { key: 'table', value: name },
      { key: 'about', value: table.about },
      { key: 'key', value: table.key.join(',') },
      { key: 'columns', value: JSON.stringify(columns) },
    ],
  });
  return writer.getBytes();
}

function storedColumns(name: string, column: Column, values: readonly Value[]): readonly StoredColumn[] {
  const repetition_type = column.empty === undefined ? 'REQUIRED' : 'OPTIONAL';
  const one = (own: Readonly<Record<string, unknown>>, data: unknown[], as = name): StoredColumn => ({
    name: as,
    element: { name: as, repetition_type, ...own },
    data,
  });
  const given = <T>(of: (value: never) => T): (T | undefined)[] =>
    values.map((value) => (value === undefined ? undefined : of(value as never)));
  switch (column.type) {
    case 'boolean':
      return [one({ type: 'BOOLEAN' }, [...values])];
    case 'integer':
      return [one({ type: 'INT32' }, [...values])];
    case 'number':
      return [one({ type: 'DOUBLE' }, [...values])];
    case 'date':
      return [
        one(
          { type: 'INT32', converted_type: 'DATE' },
          given((day: string) => new Date(`${day}T00:00:00Z`)),
        ),
      ];
    case 'instant':
      return [
        one(
          { type: 'INT64', converted_type: 'TIMESTAMP_MILLIS' },
          given((at: Stamp) => new Date(instantMs(at))),
        ),
        one(
          { type: 'INT32' },
          given((at: Stamp) => offsetMin(at)),
          `${name}_offset_min`,
        ),
      ];
    default:
      return [one({ type: 'BYTE_ARRAY', converted_type: 'UTF8' }, [...values])];
  }
}
