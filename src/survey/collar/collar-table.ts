import { type Finding, type Result, refused } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { numberIn, rowsOfTable, type TableRow, type TextTable, unreadableCell } from '../table.ts';

/** The columns of a table of collars, by what they hold. */
export interface CollarColumns {
  readonly hole: string;
  readonly easting: string;
  readonly northing: string;
  readonly elevation: string;
}

/** A surveyed collar out of a table, whole millimetres, for the hole of that name. */
export interface TableCollar {
  readonly hole: string;
  readonly eastingMm: number;
  readonly northingMm: number;
  readonly elevationMm: number;
  readonly place: Place;
}

/** The collars that could be read, and what stood in the way of the others. */
export interface CollarTableRead {
  readonly collars: readonly TableCollar[];
  readonly findings: readonly Finding[];
}

/** Every coordinate of every grid on the earth lies within this, in metres. */
const FURTHEST_M = 100_000_000;

/** Collars from a table (a CSV file already split into cells, the first row naming its columns), in metres. A hole twice is a finding. */
export function readCollarTable(table: TextTable, columns: CollarColumns, place: Place): CollarTableRead {
  const rows = rowsOfTable<keyof CollarColumns>(table, { ...columns }, place);
  if (!rows.ok) return { collars: [], findings: rows.findings };
  const collars: TableCollar[] = [];
  const findings: Finding[] = [];
  for (const row of rows.value) {
    const hole = row.text('hole');
    const numbers = (['easting', 'northing', 'elevation'] as const).map((column) =>
      coordinateIn(row, column),
    );
    const bad = numbers.flatMap((one) => (one.ok ? [] : one.findings));
    const [eastingMm = 0, northingMm = 0, elevationMm = 0] = numbers.map((one) =>
      one.ok ? Math.round(one.value * 1000) : 0,
    );
    if (hole === '') bad.push(unreadableCell(row, 'hole', 'no hole is named'));
    if (collars.some((one) => one.hole === hole))
      bad.push(unreadableCell(row, 'hole', 'this hole has a row above already'));
    findings.push(...bad);
    if (bad.length === 0) collars.push({ hole, eastingMm, northingMm, elevationMm, place: row.place });
  }
  return { collars, findings };
}

/** A coordinate of a row, in metres; refused where no grid reaches so far. */
function coordinateIn(row: TableRow<keyof CollarColumns>, column: keyof CollarColumns): Result<number> {
  const read = numberIn(row, column);
  if (!read.ok || Math.abs(read.value) <= FURTHEST_M) return read;
  return refused(unreadableCell(row, column, 'no grid reaches so far'));
}
