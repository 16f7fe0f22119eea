import { join, resolve } from 'node:path';
import { newToken } from '../desk/opening.ts';
import type { Outside } from '../desk/outside.ts';
import { bytesIfThere, errorCode, isMissing, whyRefused } from '../files/disk.ts';
import { realDisk } from '../files/real-disk.ts';
import { takeAwayOthers, writeFolder } from '../files/write-folder.ts';
import { ok, type Result, refused } from '../finding/finding.ts';
import { parquetFiles, partitionFolder } from '../handover/parquet/partitions.ts';
import type { MadeTable } from '../handover/tables/table.ts';
import {
  csvFiles,
  headingOf,
  jsonFile,
  mapFiles,
  TABLES_PAGE,
  type TableFile,
} from '../handover/tables/table-files.ts';
import { tablesOf } from '../handover/tables/tables.ts';
import { tableCsv } from '../handover/tables/write-csv.ts';
import { tablesJson } from '../handover/tables/write-json.ts';
import { siteOfProject } from '../standing/survey.ts';
import { type AtProject, atProject, type Shared } from './at-project.ts';
import { folderTaken, wrongUse } from './findings.ts';
import { EXIT, refuse, say, sayFile, sayJson, sayTrouble } from './say.ts';
import { tableText } from './table-text.ts';

/** What `offsider tables` is given. */
export interface TablesAsked extends Shared {
  /** Names of tables to print; the list of all where none is named. */
  readonly names: readonly string[];
  /** A folder to write all of them into. */
  readonly to?: string | undefined;
  readonly as: 'text' | 'csv' | 'json';
}

/** Flat tables of a project: their list, one of them printed, or all of them written into a folder. 1 where a file could not be read. */
export function tables(outside: Outside, asked: TablesAsked): Promise<number> {
  return atProject(outside, asked, async (at) => {
    const documents = [...at.desk.documents().values()];
    const made = tablesOf({ project: at.project, documents, of: documents, now: at.desk.now() });
    const code = sayLeftOut(at);
    if (asked.to !== undefined) return (await write(at, made, asked.to)) ?? code;
    const chosen = chosenOf(made, asked.names);
    if (!chosen.ok) return refuse(outside, ...chosen.findings);
    if (asked.as === 'json') sayJson(outside, tablesJson(chosen.value));
    else if (asked.as === 'csv') sayFile(outside, chosen.value.map(tableCsv).join('\r\n'));
    else if (asked.names.length === 0) say(outside, listText(made));
    else say(outside, chosen.value.map(printed).join('\n\n'));
    return code;
  });
}

/** Says which files could not be read: their rows are missing, and no one would see it in a table. */
function sayLeftOut({ outside, desk, warnings }: AtProject): number {
  const faults = [...desk.findings(), ...warnings].filter((each) => each.severity === 'fault');
  if (faults.length === 0) return EXIT.fine;
  sayTrouble(outside, { findings: faults });
  return EXIT.findings;
}

function chosenOf(made: readonly MadeTable[], names: readonly string[]): Result<readonly MadeTable[]> {
  const unknown = names.find((name) => !made.some((each) => each.name === name));
  if (unknown !== undefined)
    return refused(
      wrongUse.at(
        { thing: unknown },
        {
          problem: 'there is no table of this name',
          remedy: `There are ${made.map((each) => each.name).join(', ')}.`,
        },
      ),
    );
  return ok(names.length === 0 ? made : made.filter((each) => names.includes(each.name)));
}

function listText(made: readonly MadeTable[]): string {
  const lines = made.map(({ name, table, rows }) => [
    name,
    String(rows.length),
    table.about.split(/[.,:;]/)[0] ?? '',
  ]);
  return [
    tableText([['table', 'rows', 'what it holds'], ...lines]),
    '',
    'One of them: offsider tables collars',
    'All of them, with a page of keys and columns: offsider tables --to <folder>',
  ].join('\n');
}

function printed({ columns, rows }: MadeTable): string {
  return tableText([Object.keys(columns), ...rows.map((row) => row.map((value) => String(value ?? '')))]);
}

/** Writes every table into a folder; the exit code where it can't, undefined where it did. */
async function write(at: AtProject, made: readonly MadeTable[], to: string): Promise<number | undefined> {
  const { outside, project } = at;
  const folder = resolve(to);
  const free = await freeFolder(folder, to, headingOf(project.settings.name));
  if (!free.ok) return refuse(outside, ...free.findings);
  try {
    await writeAll(at, made, folder);
  } catch (error) {
    if (errorCode(error) === undefined) throw error;
    const problem = `the tables can't be written: ${whyRefused(error)}`;
    return refuse(
      outside,
      wrongUse.at(
        { file: to },
        { problem, remedy: 'Free space, or give a folder where this user may write, and repeat it.' },
      ),
    );
  }
  const rows = made.reduce((sum, each) => sum + each.rows.length, 0);
  say(
    outside,
    `${made.length} tables with ${rows} rows in ${to}. ${TABLES_PAGE} there says what is in each column.`,
  );
  return undefined;
}

/** Writes the files; then takes partitions away that an earlier writing left and this one has not: they would count twice in a query. */
async function writeAll({ outside, project, desk }: AtProject, made: readonly MadeTable[], folder: string) {
  const { name } = project.settings;
  const token = newToken(outside.random);
  const { grid } = siteOfProject(project);
  const files = [...csvFiles(name, made), jsonFile(made), ...mapFiles(made, grid, desk.now())];
  await writeFolder(realDisk, folder, files, token);
  const written = new Set<string>();
  await writeFolder(realDisk, folder, noting(parquetFiles(name, made), written), token);
  const kept = new Set([...written].map((file) => join(folder, ...file.split('/'))));
  for (const each of made)
    await takeAwayOthers(
      realDisk,
      join(folder, ...partitionFolder(name, each.name).split('/')),
      '.parquet',
      kept,
    );
}

/** The files one by one, the name of each noted as it goes by. */
function* noting(files: Iterable<TableFile>, names: Set<string>): Generator<TableFile> {
  for (const each of files) {
    names.add(each.file);
    yield each;
  }
}

/** Refused where the folder holds something else than tables of this project: a file of someone's could have the name of one of ours. */
async function freeFolder(folder: string, said: string, heading: string): Promise<Result<void>> {
  const taken = (problem: string) =>
    refused<never>(
      folderTaken.at(
        { file: said },
        {
          problem,
          remedy: 'Give the name of a folder that is not there yet, or one with tables of this project.',
        },
      ),
    );
  try {
    const page = await bytesIfThere(realDisk, join(folder, TABLES_PAGE));
    const first = page === undefined ? undefined : new TextDecoder().decode(page).split('\n')[0];
    if (first === `# ${heading}` || (await realDisk.list(folder)).length === 0) return ok(undefined);
    return taken(
      first?.startsWith('# Tables of ') === true
        ? `it holds tables of another project: ${first.slice('# Tables of '.length)}`
        : 'it holds files that are not tables of offsider',
    );
  } catch (error) {
    return isMissing(error) ? ok(undefined) : taken(`it can't be used: ${whyRefused(error)}`);
  }
}
