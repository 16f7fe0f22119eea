import type { Value } from './column.ts';
import type { MadeTable } from './table.ts';

/** A table for a program to read: its key, its columns, and its rows as objects with every column, `null` where a cell is empty. */
export interface TableJson {
  readonly about: string;
  readonly key: readonly string[];
  readonly columns: MadeTable['columns'];
  readonly rows: readonly { readonly [column: string]: Exclude<Value, undefined> | null }[];
}

/** Every table by its name. */
export function tablesJson(tables: readonly MadeTable[]): { readonly [table: string]: TableJson } {
  return Object.fromEntries(
    tables.map(({ name, table, columns, rows }) => {
      const names = Object.keys(columns);
      return [
        name,
        {
          about: table.about,
          key: table.key,
          columns,
          rows: rows.map((row) =>
            Object.fromEntries(names.map((column, index) => [column, row[index] ?? null])),
          ),
        },
      ];
    }),
  );
}
