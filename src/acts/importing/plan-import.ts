import { type Finding, ok, type Result } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { recordRun } from '../../hole/commands/direction.ts';
import type { Made, Maker } from '../../hole/commands/made.ts';
import { planHole } from '../../hole/commands/plan-hole.ts';
import { legendChanges } from '../../hole/commands/rows.ts';
import type { Shot } from '../../hole/direction.ts';
import type { Header } from '../../hole/header.ts';
import type { ImportSettings } from '../../project/import-settings.ts';
import type { Project } from '../../project/project.ts';
import { type Depth, depthFromMetres, formatDepth, parseDepth } from '../../quantity/depth.ts';
import { formatInterval, overlaps } from '../../quantity/interval.ts';
import { offsetMin, type Stamp, stamp } from '../../quantity/stamp.ts';
import { type DocumentName, emptyDocument, type Thing } from '../../record/document.ts';
import { identifierFault } from '../../record/identifiers.ts';
import { fieldApplies } from '../../schema/applies.ts';
import { checkRow } from '../../schema/check/row-checks.ts';
import { meaningsOf } from '../../schema/legend.ts';
import { siteOfProject } from '../../standing/survey.ts';
import { readCollarTable, type TableCollar } from '../../survey/collar/collar-table.ts';
import { readShotTable } from '../../survey/shots/shot-table.ts';
import {
  rowsOfTable,
  type TableRow,
  type TextTable,
  unreadableCell,
  unreadableRow,
} from '../../survey/table.ts';
import { type Cell, NOT_OBSERVED } from '../../value/cell.ts';
import type { Row } from '../../value/row.ts';
import { readField } from './read-field.ts';

/** A table as it came: its file by name, the SHA-256 of that, its lines. */
export interface TableGiven {
  readonly file: string;
  readonly sha256: string;
  readonly records: TextTable;
}

/** The tables of one import. */
export interface TablesGiven {
  readonly collars: TableGiven;
  readonly surveys?: TableGiven | undefined;
  readonly geology?: TableGiven | undefined;
}

/** A hole as it would come in: what is made, and the counts for the preview. */
export interface ImportedHole {
  readonly document: DocumentName;
  readonly made: Made;
  readonly depthMm: Depth;
  readonly rows: number;
  readonly loggedMm: number;
  readonly shots: number;
}

/** Everything that an import would make, and every line that does not fit. */
export interface ImportPlan {
  readonly holes: readonly ImportedHole[];
  readonly findings: readonly Finding[];
}

/**
 * Plans the import of holes that others logged, from tables and the mapping of project.json. Each hole comes in as complete and marked as
 * imported; nothing of it stands as logged here. Every line that does not fit is a finding with its file, line and column.
 */
export function planImport(
  project: Project,
  mapping: ImportSettings,
  given: TablesGiven,
  taken: ReadonlySet<string>,
  maker: Maker,
): ImportPlan {
  const findings: Finding[] = [];
  const collars = readCollars(mapping, given.collars, taken, findings);
  // Without a collar every line of the other tables would be named, and none of them is the reason.
  if (collars.size === 0) return { holes: [], findings };
  const rows = readGeology(project, mapping, given.geology, collars, findings);
  const shots = readShots(mapping, given.surveys, collars, findings);
  const holes = [...collars.values()].map((collar) => {
    const own = { rows: rows.get(collar.hole) ?? [], shots: shots.get(collar.hole) ?? [] };
    return importedHole(project, mapping, given, collar, own, maker);
  });
  return {
    holes,
    findings: findings.toSorted((a, b) =>
      (a.place.file ?? '') < (b.place.file ?? '')
        ? -1
        : (a.place.file ?? '') > (b.place.file ?? '')
          ? 1
          : (a.place.line ?? 0) - (b.place.line ?? 0),
    ),
  };
}

type ReadCollar = TableCollar & { readonly depthMm: Depth };
type ReadShot = Omit<Shot, 'run' | 'at' | 'by'>;

function readCollars(
  { collars: mapping }: ImportSettings,
  { file, records }: TableGiven,
  taken: ReadonlySet<string>,
  findings: Finding[],
): ReadonlyMap<string, ReadCollar> {
  const { hole, easting, northing, elevation } = mapping;
  const read = readCollarTable(records, { hole, easting, northing, elevation }, { file });
  findings.push(...read.findings);
  const depths = rowsOfTable<'hole' | 'depth'>(
    records,
    { hole: mapping.hole, depth: mapping.depth },
    { file },
  );
  if (!depths.ok)
    findings.push(
      ...depths.findings.filter((each) => !read.findings.some((other) => other.problem === each.problem)),
    );
  const byLine = new Map((depths.ok ? depths.value : []).map((row) => [row.place.line, row]));
  const found = new Map<string, ReadCollar>();
  for (const collar of read.collars) {
    const row = byLine.get(collar.place.line);
    if (row === undefined) continue;
    const misnamed = identifierFault(collar.hole);
    const depthMm = parseDepth(row.text('depth'));
    if (misnamed !== undefined)
      findings.push(unreadableCell(row, 'hole', `this is not a name of a hole: ${misnamed}`));
    else if (taken.has(collar.hole))
      findings.push(unreadableCell(row, 'hole', 'the project has this hole already'));
    else if (depthMm === undefined || depthMm === 0)
      findings.push(unreadableCell(row, 'depth', 'this is not a depth in metres'));
    else found.set(collar.hole, { ...collar, depthMm });
  }
  return found;
}

function readShots(
  { surveys: mapping }: ImportSettings,
  given: TableGiven | undefined,
  collars: ReadonlyMap<string, ReadCollar>,
  findings: Finding[],
): ReadonlyMap<string, readonly ReadShot[]> {
  if (mapping === undefined || given === undefined) return new Map();
  const { file, records } = given;
  const { hole, depth, dip, azimuth } = mapping;
  const columns = { hole, depth, dip, ...(azimuth === undefined ? {} : { azimuth }) };
  findings.push(...strangers(records, hole, collars, file));
  const meaning = {
    columns,
    depthOf: 'station',
    toolOffsetMm: 0,
    angleAs: 'dip',
    expectedDipDeg: undefined,
  } as const;
  const shots = new Map<string, readonly ReadShot[]>();
  for (const collar of collars.values()) {
    const read = readShotTable(records, { ...meaning, hole: collar.hole }, { file });
    findings.push(...read.findings.filter((each) => !findings.some((other) => sameFinding(each, other))));
    for (const { depthMm, place } of read.shots)
      if (depthMm > collar.depthMm)
        findings.push(
          unreadableRow(
            place,
            formatDepth(depthMm),
            `it is below the final depth of ${collar.hole}, ${formatDepth(collar.depthMm)} m`,
          ),
        );
    shots.set(
      collar.hole,
      read.shots.map(({ place: _place, ...shot }) => shot as ReadShot),
    );
  }
  return shots;
}

const sameFinding = (a: Finding, b: Finding): boolean =>
  a.problem === b.problem && a.place.line === b.place.line && a.place.file === b.place.file;

/** Lines of a table that are of no hole of the collars, once for each such hole. */
function strangers(
  records: TextTable,
  column: string,
  collars: ReadonlyMap<string, ReadCollar>,
  file: string,
): readonly Finding[] {
  const rows = rowsOfTable<'hole'>(records, { hole: column }, { file });
  if (!rows.ok) return rows.findings;
  const lines = new Map<string, TableRow<'hole'>[]>();
  for (const row of rows.value) {
    const hole = row.text('hole');
    if (!collars.has(hole)) lines.set(hole, [...(lines.get(hole) ?? []), row]);
  }
  return [...lines.values()].flatMap(([first, ...more]) =>
    first === undefined
      ? []
      : [
          {
            ...unreadableCell(first, 'hole', strangerWords(more.length + 1)),
            remedy: 'Correct the name, or give the hole a line in the table of collars.',
          },
        ],
  );
}

function strangerWords(count: number): string {
  const lines = count === 1 ? 'this line' : `${count} lines, this one first,`;
  return `${lines} ${count === 1 ? 'is' : 'are'} of a hole that has no sound line in the table of collars`;
}

function readGeology(
  project: Project,
  { geology: mapping }: ImportSettings,
  given: TableGiven | undefined,
  collars: ReadonlyMap<string, ReadCollar>,
  findings: Finding[],
): ReadonlyMap<string, readonly Row[]> {
  const found = new Map<string, Row[]>();
  if (mapping === undefined || given === undefined) return found;
  const { file, records } = given;
  const headings = headingsOf(mapping);
  const table = rowsOfTable<string>(records, Object.fromEntries(headings.map((each) => [each, each])), {
    file,
  });
  if (!table.ok) {
    findings.push(...table.findings);
    return found;
  }
  findings.push(...strangers(records, mapping.hole, collars, file));
  for (const line of table.value.filter((each) => collars.has(each.text(mapping.hole)))) {
    const read = readLine(project, mapping, line, collars);
    if (!read.ok) {
      findings.push(...read.findings);
      continue;
    }
    const { hole, row } = read.value;
    const before = found.get(hole) ?? [];
    const over = before.find((each) => overlaps(each, row));
    if (over === undefined) found.set(hole, [...before, row]);
    else
      findings.push(
        unreadableRow(
          line.place,
          `${hole} ${formatInterval(row)}`,
          `it lies over ${formatInterval(over)} m of an earlier line`,
        ),
      );
  }
  return found;
}

type GeologyMapping = NonNullable<ImportSettings['geology']>;

function headingsOf({ hole, from, to, remark, fields }: GeologyMapping): readonly string[] {
  const own = Object.values(fields).flatMap((field) =>
    'each' in field
      ? field.each.map(({ column }) => column)
      : [field.column, field.second ?? [], field.secondPercent ?? []].flat(),
  );
  return [...new Set([hole, from, to, ...(remark === undefined ? [] : [remark]), ...own])];
}

function readLine(
  { schema }: Project,
  mapping: GeologyMapping,
  line: TableRow<string>,
  collars: ReadonlyMap<string, ReadCollar>,
): Result<{ readonly hole: string; readonly row: Row }> {
  const hole = line.text(mapping.hole);
  const collar = collars.get(hole);
  const fromMm = parseDepth(line.text(mapping.from));
  const toMm = parseDepth(line.text(mapping.to));
  const bad = (column: string, problem: string) =>
    ({ ok: false, findings: [unreadableCell(line, column, problem)] }) as const;
  if (fromMm === undefined) return bad(mapping.from, 'this is not a depth in metres');
  if (toMm === undefined || toMm <= fromMm)
    return bad(mapping.to, 'this is not a depth below the top of the row');
  if (collar !== undefined && toMm > collar.depthMm)
    return bad(mapping.to, `it is below the final depth of the hole, ${formatDepth(collar.depthMm)} m`);
  const { cells, findings } = cellsOf(schema, mapping, line);
  const remark = mapping.remark === undefined ? '' : line.text(mapping.remark);
  const row: Row = { fromMm, toMm, cells, ...(remark === '' ? {} : { remark }) };
  const place: Place = { ...line.place, hole };
  const faults =
    findings.length > 0 ? findings : checkRow(schema, row, place).filter((each) => each.severity === 'fault');
  return faults.length > 0 ? { ok: false, findings: faults } : ok({ hole, row });
}

/** The cells of a line: every field that applies, what is not mapped not observed. */
function cellsOf(schema: Project['schema'], { fields }: GeologyMapping, line: TableRow<string>) {
  const cells: Record<string, Cell> = {};
  const findings: Finding[] = [];
  for (const field of schema.fields) {
    const mapping = Object.hasOwn(fields, field.name) ? fields[field.name] : undefined;
    const read = mapping === undefined ? undefined : readField(schema, field, mapping, line.text);
    if (read?.ok === false) {
      const { column, problem, remedy } = read;
      findings.push({ ...unreadableCell(line, column, problem), remedy });
      continue;
    }
    const cell = read?.cell ?? NOT_OBSERVED;
    const nothing = 'absent' in cell && cell.absent === 'not observed';
    if (!nothing || fieldApplies(schema, cells, field)) cells[field.name] = cell;
  }
  return { cells, findings };
}

function importedHole(
  project: Project,
  mapping: ImportSettings,
  given: TablesGiven,
  collar: ReadCollar,
  { rows, shots }: { readonly rows: readonly Row[]; readonly shots: readonly ReadShot[] },
  maker: Maker,
): ImportedHole {
  const document = { kind: 'hole', id: collar.hole };
  const { hole, depthMm, eastingMm, northingMm, elevationMm } = collar;
  const grid = siteOfProject(project).grid?.name ?? 'not said';
  const { rank } = mapping.collars;
  const planned = planHole(
    {
      header: headerFor(project, given, hole, depthMm, maker),
      collar: {
        rank,
        eastingMm,
        northingMm,
        elevationMm,
        grid,
        source: given.collars.file,
        at: maker.at,
        by: maker.by,
      },
    },
    maker,
  );
  const legend = legendChanges(emptyDocument(document), meaningsOf(project.schema, rows));
  const changes = [
    ...planned.changes,
    ...legend,
    ...rows
      .toSorted((a, b) => a.fromMm - b.fromMm)
      .map((row) => ({ put: ['rows', maker.newId()] as const, thing: row as unknown as Thing })),
    ...runChanges(mapping, shots, maker),
  ];
  return {
    document,
    made: {
      what: `hole ${hole} imported from ${filesOf(given)
        .map((each) => each.file)
        .join(', ')}`,
      changes,
    },
    depthMm,
    rows: rows.length,
    loggedMm: rows.reduce((sum, row) => sum + row.toMm - row.fromMm, 0),
    shots: shots.length,
  };
}

function filesOf({
  collars,
  surveys,
  geology,
}: TablesGiven): readonly { readonly file: string; readonly sha256: string }[] {
  return [collars, surveys, geology].flatMap((each) =>
    each === undefined ? [] : [{ file: each.file, sha256: each.sha256 }],
  );
}

function headerFor(project: Project, given: TablesGiven, name: string, depthMm: Depth, maker: Maker): Header {
  const [rig] = project.settings.rigs;
  return {
    name,
    state: 'complete',
    imported: { depthMm, at: maker.at, by: maker.by, files: [...filesOf(given)] },
    logFromMm: 0 as Depth,
    intervalMm: depthFromMetres(project.settings.log.intervalM),
    rodMm: depthFromMetres(rig?.rodM ?? 6),
    firstRodOffsetMm: depthFromMetres(rig?.firstRodOffsetM ?? 0),
  };
}

/** The shots as one run. Where no one says what the tool was inside of, open hole is taken: an azimuth in steel would be left out unseen. */
function runChanges({ surveys }: ImportSettings, shots: readonly ReadShot[], maker: Maker): Made['changes'] {
  if (surveys === undefined || shots.length === 0) return [];
  const { tool, toolClass, north, date } = surveys;
  const at = date === undefined ? maker.at : noonOf(date, maker.at);
  const run = {
    tool,
    toolClass,
    north,
    pass: 'single',
    inside: 'open hole',
    toolOffsetMm: 0,
    operator: 'not recorded',
    at,
    rank: 50,
  } as const;
  return recordRun(
    run,
    shots.map((shot) => ({ ...shot, at, by: maker.by })),
    maker,
  ).changes;
}

function noonOf(date: string, now: Stamp): Stamp {
  const offset = offsetMin(now);
  return stamp(Date.parse(`${date}T12:00:00Z`) - offset * 60_000, offset);
}
