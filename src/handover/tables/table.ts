import type { Project } from '../../project/project.ts';
import type { Stamp } from '../../quantity/stamp.ts';
import type { Document } from '../../record/document.ts';
import type { Columns, RowOf, Value } from './column.ts';

/** What the tables are made from. */
export interface Source {
  readonly project: Project;
  /** Every document of the project: a sample's dispatch and result may be in another one than its hole. */
  readonly documents: readonly Document[];
  /** Documents whose rows are written: all of them, or those in a bundle. */
  readonly of: readonly Document[];
  /** When they are made: a shift that goes on is counted to here. */
  readonly now: Stamp;
}

/** A row with columns that the project's schema adds. */
export type WiderRow = { readonly [column: string]: Value };

/** A table as it is declared, once: columns, key and rank, and the rows that the views of `standing` give. */
export interface Table {
  readonly name: string;
  readonly about: string;
  /** Columns that tell one row from every other. */
  readonly key: readonly string[];
  /** Which of several things of one kind counts, in words. */
  readonly rank?: string;
  readonly columns: Columns;
  /** Columns that the project's own settings add behind the declared ones, and what they are, in words. */
  readonly wider?: { readonly about: string; readonly columns: (source: Source) => Columns };
  readonly rows: (source: Source) => readonly WiderRow[];
}

/** Declares a table. Its rows have every declared column: one that is left out, or of another type, does not compile. */
export function defineTable<C extends Columns>(
  table: Omit<Table, 'columns' | 'key' | 'rows'> & {
    readonly key: readonly (keyof C & string)[];
    readonly columns: C;
    readonly rows: (source: Source) => readonly RowOf<C>[];
  },
): Table {
  return table as unknown as Table;
}

/** A table with its rows: the names of its columns, and the values in their order. */
export interface MadeTable {
  readonly name: string;
  readonly table: Table;
  readonly columns: Columns;
  readonly rows: readonly (readonly Value[])[];
}

/** The table with its rows. Throws where a row has a column that is not declared, or lacks a value that is never empty: that is a bug of ours. */
export function makeTable(table: Table, source: Source): MadeTable {
  const columns = { ...table.columns, ...table.wider?.columns(source) };
  const names = Object.keys(columns);
  const rows = table.rows(source).map((row) => {
    const undeclared = Object.keys(row).find((name) => !Object.hasOwn(columns, name));
    if (undeclared !== undefined)
      throw new Error(`table ${table.name} has no column ${undeclared}: declare it, or leave it out`);
    const missing = names.find((name) => row[name] === undefined && columns[name]?.empty === undefined);
    if (missing !== undefined)
      throw new Error(`table ${table.name}: ${missing} is empty, and the declaration says that it never is`);
    return names.map((name) => row[name]);
  });
  return { name: table.name, table, columns, rows };
}

/** Holes whose rows are written, in the order of their ids. */
export function holesOf(source: Pick<Source, 'of'>): readonly Document[] {
  return source.of
    .filter((document) => document.kind === 'hole')
    .toSorted((a, b) => a.id.localeCompare(b.id, 'en', { numeric: true }));
}

/** Shifts whose rows are written, in the order in which they started. */
export function shiftsOf(source: Pick<Source, 'of'>): readonly Document[] {
  return source.of.filter((document) => document.kind === 'shift').toSorted((a, b) => (a.id < b.id ? -1 : 1));
}
