import { basename, join, resolve } from 'node:path';
import { openDesk } from '../desk/desk.ts';
import { loadProject } from '../desk/load-project.ts';
import type { Outside } from '../desk/outside.ts';
import { readNamedFile } from '../files/read-file.ts';
import { OTHER_LIMITS } from '../files/read-json.ts';
import { realDisk } from '../files/real-disk.ts';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import type { Project } from '../project/project.ts';
import { fileOfDictionary, strokesChosen } from '../schema/change/take-dictionary.ts';
import { SETS_APART, STYLES } from '../schema/styles/index.ts';
import { siteOf } from '../survey/norths/site.ts';
import { callsNoOne } from '../termination/rules/check-rules.ts';
import type { Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { freeFolder, makeProject } from './make-project.ts';
import { plannedHole } from './program/plan-program.ts';
import { type ProgramRead, readProgram } from './program/read-program.ts';
import { schemaFiles, shippedSchemas } from './program/shipped-schemas.ts';
import { startingProject } from './program/starting-project.ts';
import { EXIT, refuse, say, sayAside, sayTrouble } from './say.ts';
import { dictionaryOf } from './schema-dictionary.ts';

/** What `offsider new` is given. */
export interface NewAsked extends Shared {
  readonly style: string;
  /** CSV of fields, lists and scales: a schema of its own in place of a style. */
  readonly dictionary?: string | undefined;
  /** CSV file of planned holes. */
  readonly program?: string | undefined;
  /** EPSG code of the grid that the program's positions are in. */
  readonly epsg?: number | undefined;
  /** Take the sound lines of the program in, though others are bad. */
  readonly keepGoing: boolean;
}

/**
 * Starts a project in a new folder, from a style, with the planned holes of a CSV. Everything is looked at before anything is made; where a
 * step of the making fails, what this command made is taken away again. What it says is done is on the medium.
 */
export async function newProject(outside: Outside, asked: NewAsked): Promise<number> {
  const folder = resolve(asked.folder);
  const name = basename(folder);
  const free = await freeFolder(folder, asked.folder);
  if (!free.ok) return refuse(outside, ...free.findings);
  if (!Object.hasOwn(STYLES, asked.style)) return refuse(outside, noStyle(asked.style));
  const schemas = shippedSchemas();
  const own = asked.dictionary === undefined ? ok(undefined) : await ownLogging(asked.dictionary);
  if (!own.ok) return refuse(outside, ...own.findings);
  const texts = startingProject({ ...asked, name, schemas: schemas.length > 0, own: own.value });
  const project = await loadProject({ folder, ...texts });
  if (!project.ok) return refuse(outside, ...project.findings);
  const program = await programOf(asked, project.value.project);
  if (!program.ok) return refuse(outside, ...program.findings);
  const { holes, findings } = program.value;
  if (findings.length > 0) sayTrouble(outside, { findings });
  if (findings.length > 0 && !asked.keepGoing) {
    sayAside(outside, 'Nothing was made. Mend the lines, or give --keep-going to leave them out.');
    return EXIT.wrongUse;
  }
  const made = await make(
    outside,
    folder,
    { ...texts, schemas },
    project.value.project,
    holes,
    programName(asked),
  );
  if (!made.ok) return refuse(outside, ...made.findings);
  say(
    outside,
    `Project ${name}, ${holes.length} planned holes.\nNext: put people, rigs and bag numbers into ${join(asked.folder, 'project.json')}, and add the site's own cautions (hazards.cautions) to the usual ones.${callWanted(project.value.project)} Then: offsider ${asked.folder}`,
  );
  return findings.length > 0 ? EXIT.findings : EXIT.fine;
}

/** The parts of a logging.json that holds a dictionary alone, with pairs and keys. */
async function ownLogging(file: string): Promise<Result<object>> {
  const dictionary = await dictionaryOf(file);
  if (!dictionary.ok) return dictionary;
  const bare = fileOfDictionary('logging', dictionary.value);
  const made = strokesChosen(bare, bare.text, { loadParent: undefined, keys: true });
  return made.ok ? ok(JSON.parse(made.value.text) as object) : made;
}

/** The program's file by its name alone: where it lay on this computer is no one's business at camp. */
function programName({ program }: NewAsked): string {
  return program === undefined ? '' : basename(program);
}

async function programOf({ program, epsg }: NewAsked, project: Project): Promise<Result<ProgramRead>> {
  if (program === undefined) return ok({ holes: [], findings: [], without: [] });
  if (epsg === undefined)
    return refused(
      wrongUse.at(
        { file: program },
        {
          problem: 'the grid of its eastings and northings is missing',
          remedy: 'Give its EPSG code: --epsg 7850.',
        },
      ),
    );
  const site = siteOf(project.settings.survey, { file: 'project.json' });
  if (!site.ok) return site;
  const bytes = await readNamedFile(realDisk, program, OTHER_LIMITS);
  if (!bytes.ok) return bytes;
  const context = {
    file: program,
    grid: site.value.grid,
    settings: project.survey,
    taken: new Set<string>(),
    schema: project.schema,
  };
  return ok(readProgram(new TextDecoder().decode(bytes.value), context));
}

async function make(
  outside: Outside,
  folder: string,
  texts: ReturnType<typeof startingProject> & { readonly schemas: ReturnType<typeof shippedSchemas> },
  project: Project,
  holes: ProgramRead['holes'],
  source = '',
): Promise<Result<void>> {
  const files = { first: texts.logging, more: schemaFiles(texts.schemas), last: texts.project };
  return makeProject(folder, files, () => planHoles(outside, folder, project, holes, source));
}

/** Plans every hole in one edit, so that the program is there whole or not at all. */
async function planHoles(
  outside: Outside,
  folder: string,
  project: Project,
  holes: ProgramRead['holes'],
  source: string,
): Promise<void> {
  const person = project.settings.people[0]?.initials ?? '';
  const opened = await openDesk({ folder, person, clock: outside.clock, random: outside.random });
  if (!opened.ok) throw new Error(opened.findings[0]?.problem);
  const desk = opened.value;
  const maker = { newId: desk.newId, at: desk.now(), by: person };
  const grid = project.settings.survey.grid;
  const from = { grid: grid === undefined || !('epsg' in grid) ? 'not said' : `EPSG ${grid.epsg}`, source };
  const parts = holes.map((hole) => {
    const { document, made } = plannedHole(project, hole, from, maker);
    return { document, changes: made.changes };
  });
  if (parts.length > 0) {
    const submitted = desk.submit({ what: `program of ${parts.length} holes planned`, parts });
    const saved = submitted.ok ? await submitted.durable : submitted;
    if (!saved.ok) {
      await desk.close({ abandon: true });
      throw new Error(saved.problem);
    }
  }
  const closed = await desk.close();
  if (!closed.ok) throw new Error(closed.problem);
}

function noStyle(style: string): Finding {
  return wrongUse.at(
    { field: '--style' },
    {
      problem: `no style is called ${style}`,
      remedy: `Styles: ${Object.keys(STYLES).join(', ')}. offsider new --style says what sets each apart.`,
    },
  );
}

/** Prints the styles with what sets each apart. */
export async function listStyles(outside: Outside): Promise<number> {
  say(
    outside,
    Object.entries(SETS_APART)
      .map(([name, apart]) => `${name}\n    ${apart}`)
      .join('\n'),
  );
  return EXIT.fine;
}

/** What a new project has to be told before its first hole: whom its safety rules say to call. */
function callWanted({ settings }: Project): string {
  const rules = settings.termination.rules.filter(callsNoOne).map(({ name }) => name);
  if (rules.length === 0) return '';
  return ` Say whom to call: the rule ${rules.join(', ')} (termination.rules) names no one yet; give it "call": "name, number or channel".`;
}
