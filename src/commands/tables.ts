import { join, resolve } from 'node:path';
import { newToken } from '../desk/opening.ts';
import type { Outside } from '../desk/outside.ts';
import { bytesIfThere, isMissing, whyRefused } from '../files/disk.ts';
import { realDisk } from '../files/real-disk.ts';
import { writeFolder } from '../files/write-folder.ts';
import { ok, type Result, refused } from '../finding/finding.ts';
import type { MadeTable } from '../handover/tables/table.ts';
import { csvFiles, jsonFile, mapFiles, TABLES_PAGE, type TableFile } from '../handover/tables/table-files.ts';
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

/** Says which files could not be read: their rows are missing, and nobody would see it in a table. */
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
    table.key.join(' + '),
    table.about.split(/[.:]/)[0] ?? '',
  ]);
  return [
    tableText([['table', 'rows', 'key', 'what it holds'], ...lines]),
    '',
    'To write them all: offsider tables --to <folder>',
  ].join('\n');
}

function printed({ columns, rows }: MadeTable): string {
  return tableText([Object.keys(columns), ...rows.map((row) => row.map((value) => String(value ?? '')))]);
}

/** Writes every table into a folder; the exit code where it can't, undefined where it did. */
async function write(at: AtProject, made: readonly MadeTable[], to: string): Promise<number | undefined> {
  const { outside } = at;
  const folder = resolve(to);
  const free = await freeFolder(folder, to);
  if (!free.ok) return refuse(outside, ...free.findings);
  const files = filesOf(at, made);
  try {
    await writeFolder(realDisk, folder, files, newToken(outside.random));
  } catch (error) {
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

function filesOf({ project, desk }: AtProject, made: readonly MadeTable[]): readonly TableFile[] {
  const { grid } = siteOfProject(project);
  return [...csvFiles(project.settings.name, made), jsonFile(made), ...mapFiles(made, grid, desk.now())];
}

/** Refused where the folder holds something else than tables: a file of somebody's could have the name of one of ours. */
async function freeFolder(folder: string, said: string): Promise<Result<void>> {
  const taken = (problem: string) =>
    refused<never>(
      folderTaken.at(
        { file: said },
        { problem, remedy: 'Give the name of a folder that is not there yet, or one with tables.' },
      ),
    );
  try {
    const page = await bytesIfThere(realDisk, join(folder, TABLES_PAGE));
    const isOurs = page !== undefined && new TextDecoder().decode(page.subarray(0, 12)) === '# Tables of ';
    if (isOurs || (await realDisk.list(folder)).length === 0) return ok(undefined);
    return taken('it holds files that are not tables of offsider');
  } catch (error) {
    return isMissing(error) ? ok(undefined) : taken(`it can't be used: ${whyRefused(error)}`);
  }
}
