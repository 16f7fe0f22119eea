import { CsvError, parse } from 'csv-parse/sync';
import { type Finding, ok, type Result, refused } from '../../finding/finding.ts';
import type { Plan } from '../../hole/header.ts';
import { NORTHS, type North } from '../../quantity/azimuth.ts';
import { type Depth, parseDepth } from '../../quantity/depth.ts';
import { checkCollarOnProgram } from '../../survey/findings/collar-off-program.ts';
import type { Grid, MapPosition } from '../../survey/grids.ts';
import type { SurveySettings } from '../../survey/settings.ts';
import { rowsOfTable, type TableRow, type TextTable } from '../../survey/table.ts';
import { programLine, programUnreadable } from './findings.ts';

/** Columns of a program, as its first line names them. `target` says what the hole is for, and may be left out with `target depth`. */
export const PROGRAM_COLUMNS = [
  'hole',
  'easting',
  'northing',
  'elevation',
  'azimuth',
  'north',
  'dip',
  'depth',
] as const;
const OPTIONAL_COLUMNS = ['target', 'target depth'] as const;
type Column = (typeof PROGRAM_COLUMNS)[number] | (typeof OPTIONAL_COLUMNS)[number];

/** A hole of the program: its name, its plan, and where its collar is planned, in metres of the project's grid. */
export interface PlannedHole {
  readonly name: string;
  readonly plan: Plan;
  readonly collar: MapPosition & { readonly elevationM: number };
}

/** The holes that could be read, and what is wrong with each other line. */
export interface ProgramRead {
  readonly holes: readonly PlannedHole[];
  readonly findings: readonly Finding[];
}

/** What a program is read against: the grid its positions are in, and the holes that there are. */
export interface ProgramContext {
  readonly file: string;
  readonly grid: Grid | undefined;
  readonly settings: Pick<SurveySettings, 'programReachM'>;
  readonly taken: ReadonlySet<string>;
}

/** Reads a program of planned holes from CSV text. Every bad line is named with its number, the cell and the reason; nothing is guessed. */
export function readProgram(text: string, context: ProgramContext): ProgramRead {
  const rows = tableOf(text, context.file);
  if (!rows.ok) return { holes: [], findings: rows.findings };
  const read = rows.value.map((row) => readLine(row));
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
  };
}

function tableOf(text: string, file: string): Result<readonly TableRow<Column>[]> {
  let table: TextTable;
  try {
    table = parse(text, { bom: true, relax_column_count: true }) as string[][];
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return refused(
      programUnreadable.at(
        { file, ...(typeof error.lines === 'number' ? { line: error.lines } : {}) },
        {
          problem: 'it is no table of comma-separated values from here on',
          remedy: 'Look for a quotation mark that is not closed.',
        },
      ),
    );
  }
  const header = (table[0] ?? []).map((name) => name.trim().toLowerCase());
  const there = OPTIONAL_COLUMNS.filter((name) => header.includes(name));
  const columns = Object.fromEntries([...PROGRAM_COLUMNS, ...there].map((name) => [name, name]));
  const rows = rowsOfTable<Column>(table, columns as Record<Column, string>, { file });
  if (!rows.ok || rows.value.length > 0) return rows;
  return refused(
    programUnreadable.at({ file }, { problem: 'it has no hole in it', remedy: 'Give a line for each hole.' }),
  );
}

interface LineRead {
  readonly row: TableRow<Column>;
  readonly name: string;
  readonly hole: PlannedHole | undefined;
  readonly findings: readonly Finding[];
}

/** Takes cells of one line, noting what is wrong with each. */
function readLine(row: TableRow<Column>): LineRead {
  const findings: Finding[] = [];
  const bad = (column: Column, problem: string, remedy: string): undefined => {
    findings.push(lineFinding(row, column, problem, remedy));
    return undefined;
  };
  const name = row.text('hole');
  if (!HOLE_NAME.test(name))
    bad('hole', 'this is no name of a hole', 'Use capitals, digits, - and _, at most 40, like ZQRC014.');
  const place = (['easting', 'northing', 'elevation'] as const).map(
    (column) =>
      numberOf(row.text(column)) ??
      bad(column, 'this is no number with a decimal point', 'Give metres of the project’s grid.'),
  );
  const direction = readDirection(row, bad);
  const depths = readDepths(row, bad);
  const [eastM, northM, elevationM] = place;
  if (findings.length > 0 || direction === undefined || depths === undefined)
    return { row, name, hole: undefined, findings };
  const target = row.text('target');
  return {
    row,
    name,
    findings,
    hole: {
      name,
      plan: { ...direction, ...depths, ...(target === '' ? {} : { target }) },
      collar: { eastM: eastM ?? 0, northM: northM ?? 0, elevationM: elevationM ?? 0 },
    },
  };
}

const HOLE_NAME = /^[A-Z0-9][A-Z0-9_-]{0,39}$/;

type Bad = (column: Column, problem: string, remedy: string) => undefined;

function readDirection(
  row: TableRow<Column>,
  bad: Bad,
): Pick<Plan, 'azimuthDeg' | 'azimuthNorth' | 'dipDeg'> | undefined {
  const azimuth = numberOf(row.text('azimuth'));
  const dip = numberOf(row.text('dip'));
  const north = NORTHS.find((each) => each === row.text('north').toLowerCase());
  if (azimuth === undefined || azimuth < 0 || azimuth > 360)
    bad(
      'azimuth',
      'this is no azimuth from 0 to 360',
      'Give degrees clockwise from the north of its own column.',
    );
  if (north === undefined)
    bad('north', 'an azimuth without its north says nothing', `Say which: ${NORTHS.join(', ')}.`);
  if (dip === undefined) bad('dip', 'this is no number with a decimal point', 'Give degrees, down negative.');
  else if (dip > 0) bad('dip', 'a positive dip points up', `Down is negative: -${dip}?`);
  else if (dip < -90) bad('dip', 'no dip is steeper than -90', 'Give degrees from 0 to -90.');
  if (azimuth === undefined || north === undefined || dip === undefined) return undefined;
  return { azimuthDeg: azimuth % 360, azimuthNorth: north as North, dipDeg: dip };
}

function readDepths(row: TableRow<Column>, bad: Bad): Pick<Plan, 'depthMm' | 'targetMm'> | undefined {
  const depthMm = parseDepth(row.text('depth'));
  if (depthMm === undefined || depthMm === 0)
    return bad('depth', 'this is no planned depth in metres', 'Give metres along the hole, like 120.');
  const text = row.text('target depth');
  if (text === '') return { depthMm };
  const targetMm: Depth | undefined = parseDepth(text);
  if (targetMm === undefined || targetMm > depthMm)
    return bad(
      'target depth',
      'this is no depth within the hole',
      'Give metres along the hole, or leave it empty.',
    );
  return { depthMm, targetMm };
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
        `this hole stands in line ${first.row.place.line} already`,
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
  { grid, settings }: ProgramContext,
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
  const others = holes.filter((each) => each !== hole).map((each) => each.collar);
  return checkCollarOnProgram(hole.collar, others, grid, settings, row.place);
}

function lineFinding(row: TableRow<Column>, column: Column, problem: string, remedy: string): Finding {
  return programLine.at({ ...row.place, field: column }, { excerpt: row.text(column), problem, remedy });
}

/** A number as it stands in the file, or undefined; a comma for the decimal point is not guessed at. */
function numberOf(text: string): number | undefined {
  return /^[+-]?(\d+(\.\d*)?|\.\d+)$/.test(text) ? Number(text) : undefined;
}
