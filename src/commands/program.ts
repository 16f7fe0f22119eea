import { basename } from 'node:path';
import { type PlanField, type Revision, revision } from '../acts/revise-program.ts';
import type { Outside } from '../desk/outside.ts';
import { remedyUnsaved, untilSaved } from '../desk/until-saved.ts';
import { readNamedFile } from '../files/read-file.ts';
import { OTHER_LIMITS } from '../files/read-json.ts';
import { realDisk } from '../files/real-disk.ts';
import type { Finding } from '../finding/finding.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import type { Change, Document, DocumentName } from '../record/document.ts';
import { siteOfProject } from '../standing/survey.ts';
import { plannedCollar, positionOf } from '../survey/collar/collars.ts';
import { type AtProject, atProject, holesOf, type Shared } from './at-project.ts';
import { programLine, wrongUse } from './findings.ts';
import { makerOf } from './lines/submit-made.ts';
import { collarMm, plannedHole } from './program/plan-program.ts';
import type { Column, PlannedHole } from './program/read-line.ts';
import { readProgram } from './program/read-program.ts';
import { EXIT, refuse, say, sayAside, sayJson, sayTrouble } from './say.ts';

/** What `offsider program` is given. */
export interface ProgramAsked extends Shared {
  /** CSV of planned holes. */
  readonly file: string;
  readonly preview: boolean;
  /** Take the sound lines though others are not. */
  readonly keepGoing: boolean;
  readonly json: boolean;
}

/** One hole of the program beside the project: new, the same, or revised. */
interface Line {
  readonly name: string;
  readonly what: 'new' | 'same' | 'revised';
  readonly parts: readonly string[];
  readonly toDo?: string | undefined;
  readonly document: DocumentName;
  readonly changes: readonly Change[];
}

/**
 * Takes a later program of planned holes in: holes that are not there are planned, those that are there get their plan revised, as one edit or not
 * at all. Holes that it doesn't name stay. 1 where a line can't be taken.
 */
export function program(outside: Outside, asked: ProgramAsked): Promise<number> {
  return atProject(outside, { ...asked, write: !asked.preview }, async (at) => {
    const bytes = await readNamedFile(realDisk, asked.file, OTHER_LIMITS);
    if (!bytes.ok) return refuse(outside, ...bytes.findings);
    const file = basename(asked.file);
    const holes = holesOf(at.desk);
    const read = readProgram(new TextDecoder().decode(bytes.value), {
      file,
      grid: siteOfProject(at.project).grid,
      settings: at.project.survey,
      taken: new Set(),
      schema: at.project.schema,
      beside: holes.flatMap((hole) => {
        const collar = plannedCollar(holeNouns(hole, 'collars'));
        return collar === undefined ? [] : [{ name: headerOf(hole).name, position: positionOf(collar) }];
      }),
    });
    const unsaid = new Set(read.without.flatMap((column) => FIELD_OF[column] ?? []));
    const compared = read.holes.map((planned) => compare(at, holes, planned, unsaid, file));
    const lines = compared.flatMap((each) => ('document' in each ? [each] : []));
    const findings = [...read.findings, ...compared.flatMap((each) => ('document' in each ? [] : [each]))];
    if (findings.length > 0) sayTrouble(outside, { findings });
    if (findings.length > 0 && !asked.keepGoing) {
      sayAside(outside, 'Nothing is recorded. Mend the lines, or give --keep-going to leave them out.');
      return EXIT.wrongUse;
    }
    sayLines(at, asked, lines, holes);
    const parts = lines.filter(({ changes }) => changes.length > 0);
    if (!asked.preview && parts.length > 0) {
      const failed = await record(at, parts, file);
      if (failed !== undefined) return failed;
    }
    return findings.length > 0 ? EXIT.findings : EXIT.fine;
  });
}

/** What of a plan the columns hold that a program may do without. */
const FIELD_OF: { readonly [name in Column]?: PlanField } = {
  target: 'target',
  'target depth': 'targetMm',
  expects: 'expects',
};

function compare(
  { desk, project }: AtProject,
  holes: readonly Document[],
  planned: PlannedHole,
  unsaid: ReadonlySet<PlanField>,
  source: string,
): Line | Finding {
  const grid = project.settings.survey.grid;
  const from = { grid: grid === undefined || !('epsg' in grid) ? 'not said' : `EPSG ${grid.epsg}`, source };
  const maker = makerOf(desk);
  const there = holes.find((hole) => {
    const { name, plannedName } = headerOf(hole);
    return [hole.id, name, plannedName].includes(planned.name);
  });
  if (there === undefined) {
    const { document, made } = plannedHole(project, planned, from, maker);
    return { name: planned.name, what: 'new', parts: [], document, changes: made.changes };
  }
  const found: Revision = revision(
    there,
    { plan: planned.plan, collar: collarMm(planned.collar), unsaid },
    from,
    maker,
  );
  if (found.kind === 'refused') return programLine.at({ file: source, hole: headerOf(there).name }, found);
  const { kind, id } = there;
  const same = { name: headerOf(there).name, document: { kind, id } };
  return found.kind === 'same'
    ? { ...same, what: 'same', parts: [], changes: [] }
    : { ...same, what: 'revised', parts: found.parts, toDo: found.toDo, changes: found.changes };
}

function sayLines(
  { outside }: AtProject,
  { json, preview }: ProgramAsked,
  lines: readonly Line[],
  holes: readonly Document[],
): void {
  const named = new Set(lines.map(({ document }) => document.id));
  const others = holes.filter(({ id }) => !named.has(id)).map((hole) => headerOf(hole).name);
  if (json) {
    sayJson(outside, {
      recorded: !preview,
      holes: lines.map(({ name, what, parts, toDo }) => ({ name, what, changes: parts, toDo })),
      notNamed: others,
    });
    return;
  }
  const count = (what: Line['what']) => lines.filter((each) => each.what === what).length;
  say(
    outside,
    [
      ...lines
        .filter(({ what }) => what !== 'same')
        .map(({ name, what, parts, toDo }) =>
          [
            what === 'new' ? `${name}: new` : `${name}: ${parts.join('; ')}`,
            ...(toDo === undefined ? [] : [`  ${toDo}`]),
          ].join('\n'),
        ),
      `${count('new')} new, ${count('revised')} revised, ${count('same')} as they are${others.length === 0 ? '' : `; not named, and left as they are: ${others.join(', ')}`}.${preview ? ' Nothing is recorded: this is the preview.' : ''}`,
    ].join('\n'),
  );
}

async function record(
  { outside, desk }: AtProject,
  lines: readonly Line[],
  file: string,
): Promise<number | undefined> {
  const count = (what: Line['what']) => lines.filter((each) => each.what === what).length;
  const submitted = desk.submit({
    what: `program ${file}: ${count('new') === 1 ? 'one hole' : `${count('new')} holes`} planned, ${count('revised')} revised`,
    parts: lines.map(({ document, changes }) => ({ document, changes })),
  });
  const saved = await untilSaved(desk, submitted);
  if (saved.ok) return undefined;
  return refuse(
    outside,
    wrongUse.at({ file }, { problem: saved.problem, remedy: remedyUnsaved(saved, 'the command') }),
  );
}
