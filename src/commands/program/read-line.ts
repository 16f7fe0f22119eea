import type { Finding } from '../../finding/finding.ts';
import type { Plan } from '../../hole/header.ts';
import { NORTH_LETTERS, NORTHS } from '../../quantity/azimuth.ts';
import { parseDepth } from '../../quantity/depth.ts';
import { identifierFault } from '../../record/identifiers.ts';
import type { LoggingSchema } from '../../schema/logging-schema.ts';
import type { Expected } from '../../survey/expected/expected.ts';
import { EXPECTED_FORM, readExpected } from '../../survey/expected/expected-said.ts';
import type { MapPosition } from '../../survey/norths/grids.ts';
import type { TableRow } from '../../survey/table.ts';
import { checkFields } from '../../termination/rules/check-fields.ts';
import { programLine } from '../findings.ts';

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
/** Columns that a program may leave out. */
export const OPTIONAL_COLUMNS = ['target', 'target depth', 'expects'] as const;
/** A column of a program. */
export type Column = (typeof PROGRAM_COLUMNS)[number] | (typeof OPTIONAL_COLUMNS)[number];

/** A hole of the program: its name, its plan, and where its collar is planned, in metres of the project's grid. */
export interface PlannedHole {
  readonly name: string;
  readonly plan: Plan;
  readonly collar: MapPosition & { readonly elevationM: number };
}

/** One line of a program as read: its hole, or what is wrong with it. */
export interface LineRead {
  readonly row: TableRow<Column>;
  readonly name: string;
  readonly hole: PlannedHole | undefined;
  readonly findings: readonly Finding[];
}

/** Reads one line of a program, every cell of it; each that is wrong is a finding. `schema`: what contacts and zones are told by in the log. */
export function readLine(row: TableRow<Column>, schema: LoggingSchema | undefined): LineRead {
  const findings: Finding[] = [];
  const bad = (column: Column, problem: string, remedy: string): undefined => {
    findings.push(lineFinding(row, column, problem, remedy));
    return undefined;
  };
  const name = row.text('hole');
  const misnamed = identifierFault(name);
  if (misnamed !== undefined)
    bad(
      'hole',
      `this is not a name of a hole: ${misnamed}`,
      'Use capitals, digits, - and _, at most 40, like ZQRC014.',
    );
  const place = (['easting', 'northing', 'elevation'] as const).map(
    (column) =>
      numberOf(row.text(column)) ??
      bad(column, 'this is not a number with a decimal point', 'Give metres of the project’s grid.'),
  );
  const direction = readDirection(row, bad);
  const depths = readDepths(row, bad);
  const expects = readExpects(row, schema, bad);
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
      plan: {
        ...direction,
        ...depths,
        ...(target === '' ? {} : { target }),
        ...(expects.length === 0 ? {} : { expects }),
      },
      collar: { eastM: eastM ?? 0, northM: northM ?? 0, elevationM: elevationM ?? 0 },
    },
  };
}

type Bad = (column: Column, problem: string, remedy: string) => undefined;

function readDirection(
  row: TableRow<Column>,
  bad: Bad,
): Pick<Plan, 'azimuthDeg' | 'azimuthNorth' | 'dipDeg'> | undefined {
  const azimuth = numberOf(row.text('azimuth'));
  const dip = numberOf(row.text('dip'));
  const said = row.text('north').trim().toLowerCase();
  const north = NORTHS.find((each) => each === said) ?? NORTH_LETTERS[said];
  if (azimuth === undefined || azimuth < 0 || azimuth > 360)
    bad(
      'azimuth',
      'this is not an azimuth from 0 to 360',
      'Give degrees clockwise from the north of its own column.',
    );
  if (north === undefined)
    bad(
      'north',
      said === '' ? 'an azimuth without its north says nothing' : 'this is no north',
      `Say which: ${NORTHS.join(', ')}, or t, m, g, l as in ;plan.`,
    );
  if (dip === undefined)
    bad('dip', 'this is not a number with a decimal point', 'Give degrees, down negative.');
  else if (dip > 0) bad('dip', 'a positive dip points up', `Down is negative: -${dip}?`);
  else if (dip < -90) bad('dip', 'no dip is steeper than -90', 'Give degrees from 0 to -90.');
  if (azimuth === undefined || north === undefined || dip === undefined) return undefined;
  return { azimuthDeg: azimuth % 360, azimuthNorth: north, dipDeg: dip };
}

function readDepths(row: TableRow<Column>, bad: Bad): Pick<Plan, 'depthMm' | 'targetMm'> | undefined {
  const depthMm = parseDepth(row.text('depth'));
  if (depthMm === undefined || depthMm === 0)
    return bad('depth', 'this is not a planned depth in metres', 'Give metres along the hole, like 120.');
  const text = row.text('target depth');
  if (text === '') return { depthMm };
  const targetMm = parseDepth(text);
  if (targetMm === undefined || targetMm > depthMm)
    return bad(
      'target depth',
      'this is not a depth within the hole',
      'Give metres along the hole, or leave it empty.',
    );
  return { depthMm, targetMm };
}

/** Contacts and zones that the plan expects, parted by semicolons: `lode 70-78 seen sulphides PYR>=2; old stope 80-84 void`. */
function readExpects(row: TableRow<Column>, schema: LoggingSchema | undefined, bad: Bad): Expected[] {
  const said = row
    .text('expects')
    .split(';')
    .map((each) => each.trim())
    .filter((each) => each !== '');
  if (said.length > 0 && schema === undefined)
    bad('expects', 'there are no codes to tell it by', 'Leave it out.');
  return said.flatMap((each) => {
    if (schema === undefined) return [];
    const read = readExpected(schema, each);
    if (!read.ok) {
      bad('expects', `${each}: ${read.problem}`, `Say it like ${EXPECTED_FORM}.`);
      return [];
    }
    const { seen } = read.expected;
    const [off] = seen === undefined ? [] : checkFields(seen, schema, row.place);
    if (off !== undefined) bad('expects', `${each}: ${off.problem}`, off.remedy);
    return [read.expected];
  });
}

/** What is wrong with a cell of a line, and what to do. */
export function lineFinding(row: TableRow<Column>, column: Column, problem: string, remedy: string): Finding {
  return programLine.at({ ...row.place, field: column }, { excerpt: row.text(column), problem, remedy });
}

/** A number as it is in the file, or undefined; a comma for the decimal point is not guessed at. */
function numberOf(text: string): number | undefined {
  return /^[+-]?(\d+(\.\d*)?|\.\d+)$/.test(text) ? Number(text) : undefined;
}
