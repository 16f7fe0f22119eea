import { readdir, rm, rmdir, unlink } from 'node:fs/promises';
import { basename, join, resolve } from 'node:path';
import { openDesk } from '../desk/desk.ts';
import { loadProject } from '../desk/load-project.ts';
import type { Outside } from '../desk/outside.ts';
import { errorCode, whyRefused } from '../files/disk.ts';
import { DOCUMENT_KINDS } from '../files/document-file.ts';
import { JOURNAL_FOLDER } from '../files/journal.ts';
import { type MadeFiles, makeFiles } from '../files/make-files.ts';
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
import { folderTaken, wrongUse } from './findings.ts';
import { plannedHole } from './program/plan-program.ts';
import { type ProgramRead, readProgram } from './program/read-program.ts';
import { SCHEMA_FOLDER, shippedSchemas } from './program/shipped-schemas.ts';
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

/** Refused where the folder holds anything, or can't be looked into. */
async function freeFolder(folder: string, said: string): Promise<Result<void>> {
  const taken = (problem: string, remedy: string) =>
    refused<never>(folderTaken.at({ file: said === '' ? 'the folder' : said }, { problem, remedy }));
  if (said.trim() === '')
    return taken('no name is given', 'Give the name of a folder that is not there yet.');
  if (/\p{Cc}/u.test(said) || basename(folder).startsWith('-'))
    return taken(
      'a folder of this name is hard to name again: it begins with a dash, or holds a line end or another character that no one can type',
      'Give a name of letters and figures.',
    );
  try {
    const inside = await readdir(folder);
    if (inside.length === 0) return ok(undefined);
    const isProject = inside.includes('project.json');
    return taken(
      isProject ? 'it holds a project already' : 'it is not empty',
      isProject ? `Open it: offsider ${said}` : 'Give the name of a folder that is not there yet.',
    );
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT') return ok(undefined);
    return taken(
      `it can't be used: ${whyRefused(error)}`,
      'Give the name of a folder that is not there yet.',
    );
  }
}

async function programOf({ program, epsg }: NewAsked, project: Project): Promise<Result<ProgramRead>> {
  if (program === undefined) return ok({ holes: [], findings: [] });
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
  const made: Made = { folders: [], files: [], rooms: [] };
  try {
    // project.json last: a folder is a project from then on, with all that belongs to it.
    await makeFiles(realDisk, folder, [texts.logging], made);
    if (texts.schemas.length > 0) await makeFiles(realDisk, join(folder, SCHEMA_FOLDER), texts.schemas, made);
    await makeFiles(realDisk, folder, [texts.project], made);
    // From here on the folder is ours alone: whoever else makes a project here has failed on logging.json.
    made.rooms = [JOURNAL_FOLDER, ...Object.values(DOCUMENT_KINDS).map((kind) => kind.folder)];
    await planHoles(outside, folder, project, holes, source);
    return ok(undefined);
  } catch (error) {
    await takeBack(folder, made);
    if (errorCode(error) !== 'EEXIST') return refused(cannotMake(folder, whyRefused(error)));
    const problem = 'a project was made in it at this very moment';
    return refused(folderTaken.at({ file: folder }, { problem, remedy: `Open it: offsider ${folder}` }));
  }
}

type Made = { -readonly [Member in keyof MadeFiles]: MadeFiles[Member] } & { rooms: readonly string[] };

/** Takes away what this command made, and no folder that holds anything else. */
async function takeBack(folder: string, { files, folders, rooms }: Made): Promise<void> {
  for (const room of rooms) await rm(join(folder, room), { recursive: true, force: true }).catch(() => {});
  for (const path of [...files].reverse()) await unlink(path).catch(() => {});
  for (const path of [...folders].reverse()) await rmdir(path).catch(() => {});
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

function cannotMake(folder: string, why: string): Finding {
  return wrongUse.at(
    { file: folder },
    {
      problem: `the project can't be made: ${why}`,
      remedy: 'Give a folder where this user may write. Nothing was left behind.',
    },
  );
}

/** What a new project has to be told before its first hole: whom its safety rules say to call. */
function callWanted({ settings }: Project): string {
  const rules = settings.termination.rules.filter(callsNoOne).map(({ name }) => name);
  if (rules.length === 0) return '';
  return ` Say whom to call: the rule ${rules.join(', ')} (termination.rules) names no one yet; give it "call": "name, number or channel".`;
}
