import { CsvError, parse } from 'csv-parse/sync';
import { type Finding, ok, type Result, refused } from '../../finding/finding.ts';
import type { LoggingSchema } from '../../schema/logging-schema.ts';
import { checkCollarOnProgram } from '../../survey/checks/collar-off-program.ts';
import type { Grid, MapPosition } from '../../survey/norths/grids.ts';
import type { SurveySettings } from '../../survey/settings.ts';
import { rowsOfTable, type TableRow, type TextTable } from '../../survey/table.ts';
import { programUnreadable } from '../findings.ts';
import {
  type Column,
  type LineRead,
  lineFinding,
  OPTIONAL_COLUMNS,
  type PlannedHole,
  PROGRAM_COLUMNS,
  readLine,
} from './read-line.ts';

/** The holes that could be read, and what is wrong with each other line. */
export interface ProgramRead {
  readonly holes: readonly PlannedHole[];
  readonly findings: readonly Finding[];
  /** Columns that may be left out and are not there. */
  readonly without: readonly Column[];
}

/** What a program is read against: the grid its positions are in, and the holes that there are. */
export interface ProgramContext {
  readonly file: string;
  readonly grid: Grid | undefined;
  readonly settings: Pick<SurveySettings, 'programReachM'>;
  readonly taken: ReadonlySet<string>;
  /** Planned positions of holes that the project has: a program of one hole is far from nothing else. */
  readonly beside?: readonly { readonly name: string; readonly position: MapPosition }[];
  /** What contacts and zones that a plan expects are told by in the log. */
  readonly schema?: LoggingSchema;
}

/** Reads a program of planned holes from CSV text. Every bad line is named with its number, the cell and the reason; nothing is guessed. */
export function readProgram(text: string, context: ProgramContext): ProgramRead {
  const rows = tableOf(text, context.file);
  if (!rows.ok) return { holes: [], findings: rows.findings, without: [] };
  const read = rows.value.rows.map((row) => readLine(row, context.schema));
  const holes = read.flatMap((each) => (each.hole === undefined ? [] : [each.hole]));
  const twice = read.flatMap((each, index) => nameTaken(each, read.slice(0, index), context.taken));
  const astray = read.flatMap((each) =>
    each.hole === undefined ? [] : checkPlace(each.row, each.hole, holes, context),
  );
  const findings = [...read.flatMap((each) => each.findings), ...twice, ...astray].sort(
    (a, b) => (a.place.line ?? 0) - (b.place.line ?? 0),
  );
  const badLines = new Set(findings.map((finding) => finding.place.line));
  return {
    holes: read.flatMap((each) =>
      each.hole === undefined || badLines.has(each.row.place.line) ? [] : [each.hole],
    ),
    findings,
    without: rows.value.without,
  };
}

function tableOf(
  text: string,
  file: string,
): Result<{ readonly rows: readonly TableRow<Column>[]; readonly without: readonly Column[] }> {
  let table: TextTable;
  try {
    table = parse(text, { bom: true, relax_column_count: true }) as string[][];
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return refused(
      programUnreadable.at(
        { file, ...(typeof error.lines === 'number' ? { line: error.lines } : {}) },
        {
          problem: 'it is not a table of comma-separated values from here on',
          remedy: 'Look for a quotation mark that is not closed.',
        },
      ),
    );
  }
  const header = (table[0] ?? []).map((name) => name.trim().toLowerCase());
  const there = OPTIONAL_COLUMNS.filter((name) => header.includes(name));
  const columns = Object.fromEntries([...PROGRAM_COLUMNS, ...there].map((name) => [name, name]));
  const rows = rowsOfTable<Column>(table, columns as Record<Column, string>, { file });
  const without = OPTIONAL_COLUMNS.filter((name) => !header.includes(name));
  if (!rows.ok) return rows;
  if (rows.value.length > 0) return ok({ rows: rows.value, without });
  return refused(
    programUnreadable.at({ file }, { problem: 'it has no hole in it', remedy: 'Give a line for each hole.' }),
  );
}

function nameTaken(
  line: LineRead,
  above: readonly LineRead[],
  taken: ReadonlySet<string>,
): readonly Finding[] {
  const first = above.find((each) => each.name === line.name);
  if (first !== undefined)
    return [
      lineFinding(
        line.row,
        'hole',
        `this hole is already in line ${first.row.place.line}`,
        'Name each hole once.',
      ),
    ];
  if (!taken.has(line.name)) return [];
  return [
    lineFinding(
      line.row,
      'hole',
      'the project has this hole already',
      'Take the line out, or name the hole otherwise.',
    ),
  ];
}

/** A collar against the others of the program; where it is far from all of them, what would bring it back is named. */
function checkPlace(
  row: TableRow<Column>,
  hole: PlannedHole,
  holes: readonly PlannedHole[],
  { grid, settings, beside = [] }: ProgramContext,
): readonly Finding[] {
  if (grid === undefined) return [];
  const { eastM, northM } = hole.collar;
  if (/\+proj=utm /.test(grid.proj) && (eastM < 100_000 || eastM > 900_000)) {
    const swapped = northM >= 100_000 && northM <= 900_000;
    return [
      lineFinding(
        row,
        'easting',
        `no place on ${grid.name} has this easting`,
        swapped ? 'Easting and northing look swapped: change them over.' : 'Check every digit and the grid.',
      ),
    ];
  }
  const others = [
    ...holes.filter((each) => each !== hole).map((each) => each.collar),
    ...beside.filter(({ name }) => holes.every((each) => each.name !== name)).map((each) => each.position),
  ];
  return checkCollarOnProgram(hole.collar, others, grid, settings, row.place);
}
