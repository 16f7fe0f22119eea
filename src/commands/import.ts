import {
  type ImportedHole,
  type ImportPlan,
  planImport,
  type TableGiven,
  type TablesGiven,
} from '../acts/importing/plan-import.ts';
import type { Outside } from '../desk/outside.ts';
import { remedyUnsaved, untilSaved } from '../desk/until-saved.ts';
import { ok, type Result, refused } from '../finding/finding.ts';
import { headerOf } from '../hole/hole.ts';
import { formatDepth } from '../quantity/depth.ts';
import { type AtProject, atProject, holesOf, type Shared } from './at-project.ts';
import { sayFindings } from './check.ts';
import { readCsvFile } from './csv-file.ts';
import { wrongUse } from './findings.ts';
import { makerOf } from './lines/submit-made.ts';
import { EXIT, refuse, say, sayAside, sayJson, sayTrouble } from './say.ts';
import { tableText } from './table-text.ts';

/** What `offsider import` is given. */
export interface ImportAsked extends Shared {
  readonly collars: string;
  readonly surveys?: string | undefined;
  readonly geology?: string | undefined;
  /** Show what would come in, and write nothing. */
  readonly preview: boolean;
  readonly json: boolean;
}

/**
 * Takes holes in that others logged, from the tables of a spreadsheet and the mapping in project.json: all of them as one edit, or none. A line
 * that does not fit is named with its file, line and column, and nothing comes in: exit 1.
 */
export function importHoles(outside: Outside, asked: ImportAsked): Promise<number> {
  return atProject(outside, { ...asked, write: !asked.preview }, async (at) => {
    const mapping = at.project.settings.import;
    const given = await tablesOf(asked);
    if (mapping === undefined) return refuse(outside, noMapping());
    if (!given.ok) return refuse(outside, ...given.findings);
    const unmapped = (['surveys', 'geology'] as const).find(
      (table) => asked[table] !== undefined && mapping[table] === undefined,
    );
    if (unmapped !== undefined) return refuse(outside, noMapping(`.${unmapped}`));
    const taken = new Set(holesOf(at.desk).flatMap((hole) => [hole.id, headerOf(hole).name]));
    const plan = planImport(at.project, mapping, given.value, taken, makerOf(at.desk));
    if (plan.findings.length > 0) return nothingTaken(at, plan, asked.json);
    if (!asked.preview) {
      const unsaved = await submitAll(at, plan.holes);
      if (unsaved !== undefined) return unsaved;
    }
    if (asked.json) sayJson(outside, { written: !asked.preview, holes: plan.holes.map(counts) });
    else say(outside, planText(plan.holes, asked.preview));
    return EXIT.fine;
  });
}

async function tablesOf({ collars, surveys, geology }: ImportAsked): Promise<Result<TablesGiven>> {
  const read = async (path: string | undefined): Promise<Result<TableGiven | undefined>> =>
    path === undefined ? ok(undefined) : readCsvFile(path);
  const [first, second, third] = [await readCsvFile(collars), await read(surveys), await read(geology)];
  if (first.ok && second.ok && third.ok)
    return ok({ collars: first.value, surveys: second.value, geology: third.value });
  return refused(...[first, second, third].flatMap((each) => (each.ok ? [] : each.findings)));
}

function nothingTaken({ outside }: AtProject, { findings }: ImportPlan, json: boolean): number {
  if (json) return sayFindings(outside, findings, true);
  sayTrouble(outside, { findings });
  const lines = findings.length === 1 ? '1 thing does' : `${findings.length} things do`;
  sayAside(
    outside,
    `${lines} not fit. Nothing came in: correct the lines or the mapping in project.json, and repeat it.`,
  );
  return EXIT.findings;
}

/** Every hole in one edit, so that all of them are there or none. */
async function submitAll(
  { desk, outside }: AtProject,
  holes: readonly ImportedHole[],
): Promise<number | undefined> {
  const submitted = desk.submit({
    what: holes.length === 1 ? (holes[0]?.made.what ?? '') : `${holes.length} holes imported`,
    parts: holes.map(({ document, made }) => ({ document, changes: made.changes })),
  });
  const saved = await untilSaved(desk, submitted);
  if (saved.ok) return undefined;
  return refuse(
    outside,
    wrongUse.at({ thing: 'import' }, { problem: saved.problem, remedy: remedyUnsaved(saved, 'the command') }),
  );
}

const counts = ({ document, depthMm, rows, loggedMm, shots }: ImportedHole) => ({
  hole: document.id,
  depthM: depthMm / 1000,
  rows,
  loggedM: loggedMm / 1000,
  shots,
});

function planText(holes: readonly ImportedHole[], preview: boolean): string {
  const lines = holes.map(({ document, depthMm, rows, loggedMm, shots }) => [
    document.id,
    formatDepth(depthMm),
    String(rows),
    formatDepth(loggedMm),
    String(shots),
  ]);
  const table = tableText([['hole', 'depth m', 'rows', 'rows m', 'shots'], ...lines]);
  return preview
    ? `${table}\nThat is what would come in, marked as imported. Nothing was written.`
    : `${table}\nImported, and marked so: none of it counts as logged here.`;
}

function noMapping(part = ''): ReturnType<typeof wrongUse.at> {
  return wrongUse.at(
    { file: 'project.json', field: `import${part}` },
    {
      problem: 'it does not say which columns of the tables hold what',
      remedy: `Write it there once, under import${part}: the headings of the columns, and what their codes mean. An editor completes it from the schema beside the project.`,
    },
  );
}
