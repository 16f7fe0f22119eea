import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { numberIn, rowsOfTable, type TableRow, type TextTable, unreadableCell } from '../table.ts';
import { type ReadShot, readTypedShot } from './typed-shot.ts';

/**
 * The columns of a table of shots, by what they hold. Azimuth and the magnetic field may be missing, as columns or cell by cell; where
 * the table holds several holes, `hole` tells them apart.
 */
export interface ShotColumns {
  readonly depth: string;
  readonly dip: string;
  readonly hole?: string;
  readonly azimuth?: string;
  readonly field?: string;
  readonly magneticDip?: string;
}

/** How a table of shots is meant. */
export interface ShotTableMeaning {
  readonly columns: ShotColumns;
  /** Whether depths are the bit's (the tool offset is then taken off) or the station's. */
  readonly depthOf: 'bit' | 'station';
  readonly toolOffsetMm: number;
  /** Whether the dip column is a dip, down negative, or an inclination from vertical. */
  readonly angleAs: 'dip' | 'inclination';
  /** The dip the hole should have, degrees, where it is known. */
  readonly expectedDipDeg: number | undefined;
  /** The hole whose rows are read, where the table names holes. */
  readonly hole?: string;
}

/** A shot out of a table: station depth, the field where the tool gave it, and its row. */
export interface TableShot extends ReadShot {
  readonly place: Place;
  readonly fieldNt?: number;
  readonly magneticDipDeg?: number;
}

/** The shots that could be read, in the order of the table, and what stood in the way of the others. */
export interface ShotTableRead {
  readonly shots: readonly TableShot[];
  readonly findings: readonly Finding[];
}

/** Shots from a table (a CSV file already split into cells, the first row naming its columns). */
export function readShotTable(table: TextTable, meaning: ShotTableMeaning, place: Place): ShotTableRead {
  const rows = rowsOfTable<keyof ShotColumns>(table, { ...meaning.columns }, place);
  if (!rows.ok) return { shots: [], findings: rows.findings };
  const own = rows.value.filter(
    (row) =>
      meaning.columns.hole === undefined || row.text('hole').toUpperCase() === meaning.hole?.toUpperCase(),
  );
  const read = own.map((row) => readRow(row, meaning));
  return {
    shots: read.flatMap((one) => one.shot ?? []),
    findings: read.flatMap((one) => one.findings),
  };
}

function readRow(row: TableRow<keyof ShotColumns>, meaning: ShotTableMeaning) {
  const cells = readCells(row, meaning.columns);
  if (cells.findings.length > 0) return { shot: undefined, findings: cells.findings };
  const { depth = Number.NaN, dip = Number.NaN, azimuth, field, magneticDip } = cells.numbers;
  const depthM = meaning.depthOf === 'bit' ? depth - meaning.toolOffsetMm / 1000 : depth;
  if (depth >= 0 && depthM < 0)
    return {
      shot: undefined,
      findings: [unreadableCell(row, 'depth', 'less the tool offset this is above the collar')],
    };
  const answer = readTypedShot(
    {
      depthM,
      dipDeg: meaning.angleAs === 'inclination' ? dip - 90 : dip,
      ...(azimuth === undefined ? {} : { azimuthDeg: azimuth }),
    },
    meaning.expectedDipDeg,
    row.place,
  );
  const shot: TableShot | undefined = answer.shot && {
    ...answer.shot,
    place: row.place,
    ...(field === undefined ? {} : { fieldNt: field }),
    ...(magneticDip === undefined ? {} : { magneticDipDeg: magneticDip }),
  };
  return { shot, findings: answer.findings };
}

/** The numbers of a row; an empty cell is missing where the column may be, and a finding where it may not. */
function readCells(row: TableRow<keyof ShotColumns>, columns: ShotColumns) {
  const numbers: Partial<Record<keyof ShotColumns, number>> = {};
  const findings: Finding[] = [];
  for (const column of Object.keys(columns) as (keyof ShotColumns)[]) {
    if (column === 'hole') continue;
    const needed = column === 'depth' || column === 'dip';
    if (!needed && row.text(column) === '') continue;
    const read = numberIn(row, column);
    if (read.ok) numbers[column] = read.value;
    else findings.push(...read.findings);
  }
  return { numbers, findings };
}
