import { csvText } from '../../finding/sheet-text.ts';
import type { MadeTable } from './table.ts';

/**
 * A table as CSV: RFC 4180, CRLF, the names of the columns first. An empty cell is an empty field, and nothing else is: no text of ours is
 * empty. A text that a spreadsheet would run is led by an apostrophe ({@link csvText}).
 */
export function tableCsv({ columns, rows }: MadeTable): string {
  return csvText([
    Object.keys(columns),
    ...rows.map((row) =>
      row.map((value) => (value === undefined ? '' : typeof value === 'boolean' ? String(value) : value)),
    ),
  ]);
}
