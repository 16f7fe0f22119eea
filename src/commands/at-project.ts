import { join } from 'node:path';
import { type Desk, openDesk } from '../desk/desk.ts';
import { type LoadedProject, loadProject } from '../desk/load-project.ts';
import { requireProject } from '../desk/opening.ts';
import type { Outside } from '../desk/outside.ts';
import { factsIfThere } from '../files/disk.ts';
import { unsavedFound } from '../files/findings.ts';
import { JOURNAL_FOLDER } from '../files/journal.ts';
import { withLastRead } from '../files/last-good.ts';
import { HAND_WRITTEN } from '../files/project-folder.ts';
import { readProjectFile } from '../files/read-file.ts';
import { type JsonText, OTHER_LIMITS, readJsonText } from '../files/read-json.ts';
import { realDisk } from '../files/real-disk.ts';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { STANDING_FINDINGS } from '../hole/findings.ts';
import { headerOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { type Document, documentKey } from '../record/document.ts';
import { holeUnknown, wrongUse } from './findings.ts';
import { rigNamed } from './rig-named.ts';
import { EXIT, refuse, sayAside, sayTrouble } from './say.ts';

/** A command at a project: the desk, open for as long as the command runs, and what the project says. */
export interface AtProject {
  readonly outside: Outside;
  readonly desk: Desk;
  readonly project: Project;
  readonly warnings: readonly Finding[];
}

/** What every command can be given about its project. */
export interface Shared {
  readonly folder: string;
  /** Initials of who signs; the first geologist of project.json where none are given. */
  readonly by?: string | undefined;
  /** The rig; the first one of project.json where none is given. */
  readonly rig?: string | undefined;
}

/** What a command asks of a project. */
export interface Asked extends Shared {
  /** Write to it: takes the lock, and stamps edits with a person. Else nothing on the disk is touched. */
  readonly write?: boolean;
  /** Set by a person who knows that whoever holds the project is gone. */
  readonly takeOver?: boolean;
  /** Set by a command whose answer has everything that the opening found. */
  readonly saysFound?: true;
}

/**
 * Opens a project, does the work and closes it again; gives the exit code. Where the project can't be opened, says why on stderr, changes
 * nothing, and gives 2. A project whose two hand-written files can't be used is never locked.
 */
export async function atProject(
  outside: Outside,
  asked: Asked,
  work: (at: AtProject) => Promise<number>,
): Promise<number> {
  const opened = await openProject(outside, asked);
  if (!opened.ok) return refuse(outside, ...opened.findings);
  const { desk } = opened.value;
  const found = desk.findings();
  if (asked.saysFound !== true) sayFirst(outside, found, asked.write);
  let code: number;
  try {
    code = await work(opened.value);
  } catch (bug) {
    await desk.close({ abandon: true });
    throw bug;
  }
  const closed = await closeSaying(outside, asked.folder, desk);
  sayFoundSince(outside, found, desk.findings());
  return closed ? code : EXIT.findings;
}

/**
 * Says before any answer what changes how it is read. Edits that a console could not save: they wait in the person's own folder, or this
 * opening put them in, and the next line follows them. The clock: only where something is stamped with it.
 */
export function sayFirst(outside: Outside, found: readonly Finding[], isStamping = false): void {
  const first = found.filter(
    ({ code }) => code === unsavedFound.code || (isStamping && code === STANDING_FINDINGS.clockBehind.code),
  );
  if (first.length > 0) sayTrouble(outside, { findings: first });
}

/** Says what came up of the project's files while the command ran: another program wrote one, or took one away. */
function sayFoundSince(outside: Outside, before: readonly Finding[], now: readonly Finding[]): void {
  const since = now.filter((finding) => !before.includes(finding));
  if (since.length > 0) sayTrouble(outside, { findings: since });
}

/** Closes a project; says of edits that the disk had not taken whether they are saved after all. True where everything is. */
async function closeSaying(outside: Outside, folder: string, desk: Desk): Promise<boolean> {
  const waiting = desk.health().waiting.map(({ what }) => what);
  const closed = await desk.close();
  const named = `${waiting.slice(0, MOST_NAMED).join('; ')}${waiting.length > MOST_NAMED ? '; …' : ''}`;
  if (closed.ok) {
    if (waiting.length > 0)
      sayAside(outside, `The disk took it in the end. Saved: ${named}. Don't give it again.`);
    return true;
  }
  await desk.close({ abandon: true });
  const remedy = `Not saved as far as is known: ${named}. Mend that, look at the last row of the hole, and give again what is not there.`;
  sayTrouble(outside, { findings: [wrongUse.at({ file: folder }, { problem: closed.problem, remedy })] });
  return false;
}

const MOST_NAMED = 5;

/** The person's own folder, where edits are kept that a project's disk does not take; none where there is no such folder. */
function unsavedFolder({ env }: Outside): { readonly unsavedFolder?: string } {
  const home = env.HOME ?? env.USERPROFILE ?? '';
  return home === '' ? {} : { unsavedFolder: join(home, '.offsider') };
}

/** Opens a project with what it says; refused with every reason, and with nothing changed. The caller closes the desk. */
export async function openProject(outside: Outside, asked: Asked): Promise<Result<AtProject>> {
  const { folder } = asked;
  const loaded = await readByHand(folder);
  if (!loaded.ok) return loaded;
  const named = namedIn(loaded.value.project, asked);
  if (!named.ok) return named;
  const { project, person } = named.value;
  const { warnings } = loaded.value;
  const { clock, random } = outside;
  const open = (readOnly: boolean) =>
    openDesk({
      folder,
      clock,
      random,
      person,
      readOnly,
      takeOver: asked.takeOver === true,
      ...unsavedFolder(outside),
    });
  const readOnly = asked.write !== true;
  // The first opening for writing makes the journal: what would refuse the project is looked for before that.
  if (!readOnly && (await factsIfThere(realDisk, join(folder, JOURNAL_FOLDER))) === undefined) {
    const looked = await open(true);
    if (!looked.ok) return looked;
    const newer = newerFiles(looked.value);
    if (newer.length > 0) return refused(...newer);
  }
  const opened = await open(readOnly);
  if (!opened.ok) return opened;
  const newer = newerFiles(opened.value);
  if (newer.length === 0) return ok({ outside, desk: opened.value, project, warnings });
  await opened.value.close();
  return refused(...newer);
}

/** Files that a later version wrote: they refuse the project, for this version can't tell what it would do to them. */
function newerFiles(desk: Desk): readonly Finding[] {
  return desk.findings().filter((finding) => finding.code === 'newer-format');
}

/** The project that the two hand-written files of a folder make, read before anything is locked. */
export async function readByHand(folder: string): Promise<Result<LoadedProject>> {
  const read = await readBoth(folder);
  if (read.ok) return read;
  return refused(...(await withLastRead(realDisk, folder, read.findings)));
}

async function readBoth(folder: string): Promise<Result<LoadedProject>> {
  const there = await requireProject(realDisk, folder);
  if (!there.ok) return there;
  const project = await jsonIn(folder, HAND_WRITTEN.project);
  const logging = await jsonIn(folder, HAND_WRITTEN.logging);
  const findings = [project, logging].flatMap((each) => (each === undefined || each.ok ? [] : each.findings));
  if (findings.length > 0) return refused(...findings);
  const given = (read: Result<JsonText> | undefined) => (read?.ok === true ? read.value : undefined);
  return loadProject({ folder, project: given(project), logging: given(logging) });
}

async function jsonIn(folder: string, file: string): Promise<Result<JsonText> | undefined> {
  if ((await factsIfThere(realDisk, join(folder, file))) === undefined) return undefined;
  const bytes = await readProjectFile(realDisk, folder, file, OTHER_LIMITS);
  return bytes.ok ? readJsonText(bytes.value, file, OTHER_LIMITS) : bytes;
}

/**
 * The person and the rig that are named, compared with project.json; refused where it knows one of them not. The rig named is the first of the
 * project for this command, so that it is meant wherever none is said.
 */
export function namedIn(
  project: Project,
  { by, rig }: Pick<Shared, 'by' | 'rig'>,
): Result<{ readonly project: Project; readonly person: string }> {
  const person = personOf(project, by);
  const found = rigNamed(project, rig);
  if (!person.ok || !found.ok)
    return refused(...[person, found].flatMap((each) => (each.ok ? [] : each.findings)));
  const { settings } = project;
  const rigs = [
    ...settings.rigs.filter((each) => each.name === found.value),
    ...settings.rigs.filter((each) => each.name !== found.value),
  ];
  return ok({ project: { ...project, settings: { ...settings, rigs } }, person: person.value });
}

function personOf({ settings }: Project, by: string | undefined): Result<string> {
  const { people } = settings;
  const found =
    by === undefined
      ? (people.find((each) => each.role === 'geologist') ?? people[0])
      : people.find((each) => each.initials.toUpperCase() === by.toUpperCase());
  if (found !== undefined) return ok(found.initials);
  const initials = people.map((each) => each.initials).join(', ');
  return refused(
    wrongUse.at(
      { file: 'project.json', field: 'people' },
      {
        problem: `${by} is not one of the people in project.json`,
        remedy: `Use one of ${initials}, or add the person there.`,
      },
    ),
  );
}

/** The hole of that name or id, or why not: unknown, or a file that can't be read. */
export function holeNamed({ desk }: AtProject, name: string): Result<Document> {
  const holes = holesOf(desk);
  const wanted = name.toUpperCase();
  const found = holes.find((hole) => hole.id === wanted || headerOf(hole).name.toUpperCase() === wanted);
  if (found !== undefined) {
    const closed = desk.closed.get(documentKey(found));
    if (closed === undefined || desk.readOnly) return ok(found);
  }
  const reason = desk.closed.get(`hole/${wanted}`);
  if (reason !== undefined) {
    const why = desk.findings().filter((finding) => finding.place.file === `holes/${wanted}.json`);
    if (why.length > 0) return refused(...why);
  }
  const near = holes.map((hole) => hole.id).slice(0, 12);
  return refused(
    holeUnknown.at(
      { hole: name },
      {
        problem: reason ?? 'the project has no such hole',
        remedy:
          near.length === 0
            ? 'It has none yet.'
            : `It has ${near.join(', ')}${holes.length > near.length ? ' …' : ''}.`,
      },
    ),
  );
}

/** Holes of a project in the order of their names. */
export function holesOf(desk: Pick<Desk, 'documents'>): readonly Document[] {
  return [...desk.documents().values()]
    .filter((document) => document.kind === 'hole')
    .sort((a, b) => a.id.localeCompare(b.id, 'en', { numeric: true }));
}
