import {
  appendFileSync,
  cpSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { type DeskOptions, openDesk } from '../../../src/desk/desk.ts';
import { loadProject } from '../../../src/desk/load-project.ts';
import type { Finding } from '../../../src/finding/finding.ts';
import { deskOptions, done, newProject, opened, projectWithHole } from '../../desk/support/project.ts';
import { troubledDesk } from '../../desk/support/troubled.ts';
import { HOLE, holeMade, remarksOf, rowLogged } from '../../desk/support/values.ts';
import { faultOptions } from '../../faults/sitting.ts';
import { type ErrorCase, findingsIn, given } from '../error-case.ts';

const HOLE_FILE = 'holes/ZQRC001.json';
const GONE = { host: 'rig-laptop', process: 2, boot: '', isRunning: () => false };

/** What is found on opening a folder, or why it is not opened. */
async function onOpening(folder: string, more: Partial<DeskOptions> = {}): Promise<readonly Finding[]> {
  const result = await openDesk(deskOptions(folder, { takeOver: true, ...more }));
  if (!result.ok) return result.findings;
  const findings = result.value.findings();
  await result.value.close();
  return findings;
}

/** A project with a hole of three rows, with something done to it since. */
async function afterwards(
  change: (folder: string) => void,
  more: Partial<DeskOptions> = {},
): Promise<readonly Finding[]> {
  const { folder } = await projectWithHole();
  change(folder);
  return onOpening(folder, more);
}

/** The text of a file of a project, changed throughout. */
const edit = (file: string, from: string, to: string) => (folder: string) =>
  writeFileSync(join(folder, file), readFileSync(join(folder, file), 'utf8').replaceAll(from, to));

/** The folder of a project as its console leaves it when it is killed: rows are in the journal only. */
async function killed(change: (folder: string) => void): Promise<readonly Finding[]> {
  const folder = newProject();
  const desk = await opened(folder, { idleMs: 100_000, machine: { ...GONE, process: 1 } });
  await done(desk, HOLE, holeMade());
  await done(desk, HOLE, [rowLogged(desk.newId(), 0)]);
  const left = newProject();
  cpSync(folder, left, { recursive: true });
  await desk.close();
  change(left);
  return onOpening(left, { machine: GONE, takeOver: false });
}

/** A hole with remarks of so many MB, which are in its table and in its history. */
async function grown(megabytes: number): Promise<readonly Finding[]> {
  const { desk } = await troubledDesk();
  await done(desk, HOLE, holeMade());
  await done(desk, HOLE, remarksOf(desk, megabytes));
  await desk.snapshot();
  return desk.findings();
}

const firstGeneration = (folder: string): string =>
  join(folder, 'journal', readdirSync(join(folder, 'journal')).find((name) => name.endsWith('.jsonl')) ?? '');

/** A copy that was logged on elsewhere laid over a hole of which the journal holds a row. */
async function laidOver(): Promise<readonly Finding[]> {
  const { folder } = await projectWithHole();
  const [theirs, left] = [newProject(), newProject()];
  cpSync(folder, theirs, { recursive: true });
  const elsewhere = await opened(theirs);
  await done(elsewhere, HOLE, [rowLogged(elsewhere.newId(), 5)]);
  await elsewhere.close();
  const here = await opened(folder, { idleMs: 100_000 });
  await done(here, HOLE, [rowLogged(here.newId(), 6)]);
  cpSync(folder, left, { recursive: true });
  await here.close();
  cpSync(join(theirs, HOLE_FILE), join(left, HOLE_FILE));
  return onOpening(left);
}

/** An older copy put back over a hole of which the journal holds later rows. */
/** An older copy laid over a hole of a console that was closed, or killed with a row that only the journal holds; with what is kept of the journal or without. */
async function putBack({ killed, past }: { killed: boolean; past: boolean }): Promise<readonly Finding[]> {
  const { folder } = await projectWithHole();
  const left = newProject();
  const older = readFileSync(join(folder, HOLE_FILE));
  const desk = await opened(folder, { idleMs: 100_000 });
  await done(desk, HOLE, [rowLogged(desk.newId(), 5)]);
  await desk.snapshot();
  if (killed) await done(desk, HOLE, [rowLogged(desk.newId(), 6)]);
  else await desk.close();
  cpSync(folder, left, { recursive: true });
  if (killed) await desk.close();
  writeFileSync(join(left, HOLE_FILE), older);
  const journal = join(left, 'journal');
  if (!past)
    for (const name of readdirSync(journal).filter((each) => each.endsWith('.past')))
      rmSync(join(journal, name));
  return onOpening(left);
}

async function secondConsole(takeOver = false): Promise<readonly Finding[]> {
  const folder = newProject();
  const first = await opened(folder, { machine: { ...GONE, process: 1, isRunning: () => true } });
  const findings = await onOpening(folder, { takeOver, machine: { ...GONE, isRunning: () => true } });
  await first.close();
  return findings;
}

/** A console closed while its disk was full, then opened again. */
async function closedUnsaved(): Promise<readonly Finding[]> {
  const { desk, trouble, disk } = await troubledDesk({ unsavedFolder: '/home' });
  await done(desk, HOLE, holeMade());
  trouble.now = 'ENOSPC';
  await done(desk, HOLE, [rowLogged(desk.newId(), 0)], '0–1 logged');
  await desk.close({ abandon: true, keep: true });
  trouble.now = undefined;
  const again = await openDesk({ ...faultOptions(disk, 4), unsavedFolder: '/home' });
  if (!again.ok) throw new Error('must open');
  const findings = again.value.findings();
  await again.value.close();
  return findings;
}

const OLDER = {
  migrations: [{ kind: 'hole', from: 0, upgrade: <T>(file: T): T => ({ ...file }) }],
};

/** Errors of files/ and desk/: what opening a project can find or refuse. */
/** What is said of what stays where it was when work goes on in another folder. */
async function movedAway(): Promise<readonly Finding[]> {
  const { folder } = await projectWithHole();
  mkdirSync(join(folder, 'photos'));
  writeFileSync(join(folder, 'photos/tray-1.jpg'), '');
  const desk = await opened(folder);
  const moved = await desk.moveTo(join(newProject(), 'stick'));
  await desk.close();
  // The folder has another name at each run.
  return moved.ok ? moved.left.map((each) => ({ ...each, remedy: each.remedy.replace(folder, 'west') })) : [];
}

/** What is found where the file of another hole was laid over that of one whose edits are in the journal only. */
async function otherLaidOver(): Promise<readonly Finding[]> {
  const other = await projectWithHole(1);
  return killed((folder) => {
    mkdirSync(join(folder, 'holes'), { recursive: true });
    const text = readFileSync(join(other.folder, HOLE_FILE), 'utf8');
    writeFileSync(join(folder, HOLE_FILE), text);
  });
}

export const FILE_CASES: readonly ErrorCase[] = [
  given('unreadable-file', 'a folder under the name of a hole', () =>
    afterwards((folder) => mkdirSync(join(folder, 'holes/ZQRC009.json'))),
  ),
  given('not-json', 'a hole with a comma taken out', () =>
    afterwards(edit(HOLE_FILE, '"kind": "hole",', '"kind": "hole"')),
  ),
  given('unsafe-json', 'a hole that says its id twice', () =>
    afterwards(edit(HOLE_FILE, '"kind": "hole",', '"kind": "hole", "id": "ZQRC001",')),
  ),
  given('wrong-shape', 'a hole in a file under the name of another', () =>
    afterwards((folder) => cpSync(join(folder, HOLE_FILE), join(folder, 'holes/ZQRC007.json'))),
  ),
  given('newer-format', 'a hole of format 5', () =>
    afterwards(edit(HOLE_FILE, '"format": 1', '"format": 5')),
  ),
  given('file-nears-limit', 'a hole whose file has grown to two thirds of what is read', () => grown(8)),
  given('file-too-large-to-write', 'a hole that would make a file of 26 MB', () => grown(12)),
  given('older-format', 'a hole of format 0', () =>
    afterwards(edit(HOLE_FILE, '"format": 1', '"format": 0'), OLDER),
  ),
  given('foreign-file', 'a copy that a file manager made', () =>
    afterwards((folder) => writeFileSync(join(folder, 'holes/ZQRC001 (copy).json'), '{}')),
  ),
  given('link-outside', 'a hole that is a link to /dev/null', () =>
    afterwards((folder) => symlinkSync('/dev/null', join(folder, 'holes/ZQRC008.json'))),
  ),
  given('missing-file', 'a hole taken away', () => afterwards((folder) => rmSync(join(folder, HOLE_FILE)))),
  given('broken-history', 'another name throughout a history', () =>
    afterwards(edit(HOLE_FILE, 'Ana Reyes', 'No one')),
  ),
  given('edited-outside', 'a state changed in the tables by an editor', () =>
    afterwards((folder) => {
      const file = join(folder, HOLE_FILE);
      writeFileSync(file, readFileSync(file, 'utf8').replace('"state": "drilling"', '"state": "suspended"'));
    }),
  ),
  given('torn-tail', 'a journal that ends within a line', () =>
    killed((folder) => appendFileSync(firstGeneration(folder), '{"crc":"12345678","seq":4,"sa')),
  ),
  given('damaged-journal', 'a state changed in the journal', () =>
    killed((folder) => {
      const file = firstGeneration(folder);
      writeFileSync(file, readFileSync(file, 'utf8').replace('"state":"drilling"', '"state":"suspended"'));
    }),
  ),
  given(
    'journal-misfit',
    'an older copy put over a hole that the journal goes on from, and what it lacks is gone',
    () => putBack({ killed: true, past: false }),
  ),
  given('rolled-back-and-restored', 'an older copy put over a hole', () =>
    putBack({ killed: false, past: true }),
  ),
  given('file-rolled-back', 'an older copy put over a hole, and what it lacks is gone', () =>
    putBack({ killed: false, past: false }),
  ),
  given('rebuilt-from-journal', 'a hole of half a line whose making is in the journal', () =>
    killed((folder) => {
      mkdirSync(join(folder, 'holes'), { recursive: true });
      writeFileSync(join(folder, HOLE_FILE), '{"broken');
    }),
  ),
  given('journal-ahead', 'a console that was killed before it wrote the file of a hole', () =>
    killed(() => {}),
  ),
  given('copy-refused', 'another hole laid over one that the journal holds', otherLaidOver),
  given('copies-merged', 'a copy from elsewhere laid over a hole', laidOver),
  given('project-in-use', 'a second console', () => secondConsole()),
  given('stale-lock', 'the lock of a console that was killed', () => killed(() => {})),
  given('lock-taken', 'the lock of a console that is open, taken over', () => secondConsole(true)),
  given('unsaved-put-in', 'a console closed on a full disk, and opened again', closedUnsaved),
  given('left-behind', 'photographs in a project that work moves away from', movedAway),
  given('no-project', 'a folder without project.json', () => {
    const folder = join(newProject(), 'west');
    mkdirSync(folder);
    return onOpening(folder);
  }),
  given('no-project-here', 'neither of the two files written by hand', async () =>
    findingsIn(await loadProject({ folder: 'survey photos', project: undefined, logging: undefined })),
  ),
];
