import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import { tableUnreadable } from './findings.ts';

/** A table as text: its first row names the columns. */
export type TextTable = readonly (readonly string[])[];

/** One row of a table whose columns have been found: the text of each wanted column, and where it is. */
export interface TableRow<K extends string> {
  readonly place: Place;
  readonly text: (column: K) => string;
  readonly name: (column: K) => string;
}

/**
 * The rows of a table by a mapping from what we want to the names of its columns. Names are compared without regard to case and
 * outer spaces; rows with nothing in them are passed over. Refused, with every missing column named, when one isn't there.
 */
export function rowsOfTable<K extends string>(
  table: TextTable,
  columns: Readonly<Partial<Record<K, string>>>,
  place: Place,
): Result<readonly TableRow<K>[]> {
  const header = (table[0] ?? []).map(plain);
  const wanted = (Object.keys(columns) as K[]).flatMap((key) => {
    const name = columns[key];
    return name === undefined ? [] : [[key, name] as const];
  });
  const missing = wanted.filter(([, name]) => !header.includes(plain(name)));
  if (missing.length > 0)
    return refused(
      ...missing.map(([, name]) =>
        tableUnreadable.at(
          { ...place, line: 1 },
          {
            excerpt: (table[0] ?? []).join(', '),
            problem: `there is no column "${name}"`,
            remedy: 'Name the columns as in the first line of the file.',
          },
        ),
      ),
    );
  const indexOf = new Map(wanted.map(([key, name]) => [key, header.indexOf(plain(name))]));
  const rows = table.slice(1).flatMap((cells, index): TableRow<K>[] => {
    if (cells.every((cell) => cell.trim() === '')) return [];
    return [
      {
        place: { ...place, line: index + 2 },
        text: (column) => (cells[indexOf.get(column) ?? -1] ?? '').trim(),
        name: (column) => columns[column] ?? column,
      },
    ];
  });
  return ok(rows);
}

/**
 * Columns said on one line, `depth=MD,azimuth=Azi`, laid over the usual names of those that the table's first line has. A name said empty
 * (`azimuth=`) means that the table has none. Refused, with what can be said, for a key that is none of ours.
 */
export function columnsSaid<K extends string>(
  table: TextTable,
  keys: readonly K[],
  said: string,
  place: Place,
): Result<Readonly<Partial<Record<K, string>>>> {
  const header = (table[0] ?? []).map(plain);
  const columns = new Map<K, string>(keys.filter((key) => header.includes(key)).map((key) => [key, key]));
  for (const pair of said === '' ? [] : said.split(',')) {
    const [key = '', ...name] = pair.split('=');
    const known = keys.find((each) => each === plain(key));
    if (known === undefined || name.length === 0)
      return refused(
        tableUnreadable.at(place, {
          excerpt: pair,
          problem: 'this names no column',
          remedy: `Say it like ${keys[0]}=Name; there can be ${keys.join(', ')}.`,
        }),
      );
    if (name.join('=').trim() === '') columns.delete(known);
    else columns.set(known, name.join('=').trim());
  }
  return ok(Object.fromEntries(columns) as Partial<Record<K, string>>);
}

const plain = (name: string) => name.trim().toLowerCase();

/** A cell as a number; a finding when it is none. A comma for the decimal point is not guessed at. */
export function numberIn<K extends string>(row: TableRow<K>, column: K): Result<number> {
  const text = row.text(column);
  if (/^[+-]?(\d+(\.\d*)?|\.\d+)$/.test(text)) return ok(Number(text));
  return refused(
    unreadableCell(
      row,
      column,
      text === '' ? 'nothing is here' : 'this is not a number with a decimal point',
    ),
  );
}

/** The finding for a cell that can't be taken as it is. */
export function unreadableCell<K extends string>(row: TableRow<K>, column: K, problem: string): Finding {
  return tableUnreadable.at(
    { ...row.place, field: row.name(column) },
    { excerpt: row.text(column), problem, remedy: 'Correct the cell; the row is not read until then.' },
  );
}

/** The finding for a whole row that can't be taken. */
export function unreadableRow(place: Place, excerpt: string, problem: string): Finding {
  return tableUnreadable.at(place, { excerpt, problem, remedy: 'Correct the row, or take it out.' });
}
