import { mkdirSync, writeFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import type { AtProject } from '../../src/commands/at-project.ts';
import { takeFiles } from '../../src/commands/camp.ts';
import { takeCertificate } from '../../src/commands/take-certificate.ts';
import { openDesk } from '../../src/desk/desk.ts';
import { loadProject } from '../../src/desk/load-project.ts';
import { pack } from '../../src/desk/packing/pack.ts';
import type { Disk } from '../../src/files/disk.ts';
import { makeFiles } from '../../src/files/make-files.ts';
import { realDisk } from '../../src/files/real-disk.ts';
import { apply } from '../../src/record/apply.ts';
import type { Change, Document, DocumentName } from '../../src/record/document.ts';
import { freshFolder, hear } from '../commands/support/outside.ts';
import { sampleFiles } from '../console/support/sitting.ts';
import { HOLE, holeMade, rowLogged } from '../desk/support/values.ts';
import { afterKill, afterPowerCut, newMedium } from './medium.ts';
import { recordingDisk } from './recording-disk.ts';
import { dayAfterACrash, firstDay, type MakeDisk, type Start } from './runs.ts';
import {
  EMPTY_PROJECT,
  faultOptions,
  freshProject,
  nothingSeen,
  projectOn,
  type Seen,
  type Sitting,
  sitDown,
} from './sitting.ts';

const CERTIFICATE: DocumentName = { kind: 'results', id: 'WA26-0500' };

/** Everything that is done under faults, by name, each from where it begins. */
export const SCENARIOS: readonly (readonly [string, (makeDisk?: MakeDisk) => Promise<Start>])[] = [
  ['a sitting on a new project', firstDay],
  ['a sitting on a project whose last console was killed', dayAfterACrash],
  ['the first opening of a project that came without a journal', cameWithoutJournal],
  ['a project that is made with its planned holes', newlyMade],
  ['what is packed for camp', packedForCamp],
  ['a copy that comes back newer, and the same again', cameBack],
  ['copies of two sides that cross twice', crossing],
  ['results of the laboratory', resultsCame],
  ['a mail from camp, taken in by the command', mailTakenIn],
  ['a CSV of the laboratory, taken in by the command', csvTakenIn],
];

/** Does a sitting's work without faults, closes, and gives what is on the medium and was seen. */
async function after(
  run: (disk: Disk, seen: Seen) => Promise<void>,
  makeDisk: MakeDisk = recordingDisk,
): Promise<Start> {
  const medium = await freshProject();
  const seen = nothingSeen();
  await run(
    makeDisk(medium, () => undefined),
    seen,
  );
  return { medium: afterPowerCut(medium, () => 'keep'), seen, makeDisk };
}

async function twoRows(disk: Disk, seen: Seen): Promise<void> {
  const sitting = await sitDown(disk, seen);
  if (sitting === undefined) return;
  const { desk, say, pause, close } = sitting;
  say('hole made', [HOLE, holeMade()]);
  say('0–1 logged', [HOLE, [rowLogged(desk.newId(), 0)]]);
  await pause();
  say('1–2 logged', [HOLE, [rowLogged(desk.newId(), 1)]]);
  await pause();
  await close();
}

/** The files of a project as they come from a mail or a stick: no journal, no lock, no id of the copy. */
async function cameWithoutJournal(makeDisk: MakeDisk = recordingDisk): Promise<Start> {
  const start = await after(twoRows, makeDisk);
  const from = recordingDisk(start.medium);
  const medium = newMedium();
  const to = recordingDisk(medium);
  await to.makeFolder('/project');
  await to.makeFolder('/project/holes');
  for (const file of ['project.json', 'holes/ZQRC001.json']) {
    const made = await to.create(`/project/${file}`);
    await made.write(await from.readFile(`/project/${file}`));
    await made.sync();
  }
  for (const folder of ['/project/holes', '/project', '/']) await to.syncFolder(folder);
  return {
    medium,
    seen: start.seen,
    makeDisk,
    run: async (disk, seen) => {
      const sitting = await sitDown(disk, seen);
      if (sitting === undefined) return;
      sitting.say('2–3 logged', [HOLE, [rowLogged(sitting.desk.newId(), 2)]]);
      await sitting.pause();
      await sitting.close();
    },
  };
}

async function newlyMade(makeDisk: MakeDisk = recordingDisk): Promise<Start> {
  return {
    medium: newMedium(),
    seen: { ...nothingSeen(), made: false },
    makeDisk,
    run: async (disk, seen) => {
      const folder = projectOn(disk);
      const texts = [
        { file: 'logging.json', text: '{}\n' },
        { file: 'project.json', text: EMPTY_PROJECT },
      ];
      const failed = await makeFiles(disk, folder, texts, { folders: [], files: [] }).then(
        () => false,
        () => true,
      );
      if (failed) return;
      seen.made = true;
      seen.written.push({
        path: join(folder, 'project.json'),
        bytes: new TextEncoder().encode(EMPTY_PROJECT),
      });
      const sitting = await sitDown(disk, seen);
      if (sitting === undefined) return;
      const planned = [HOLE, { kind: 'hole', id: 'ZQRC002' }, { kind: 'hole', id: 'ZQRC003' }] as const;
      sitting.say('program planned', ...planned.map((name) => [name, holeMade(name.id)] as const));
      await sitting.pause();
      await sitting.close();
    },
  };
}

/** Settings and one hole of the sample: what is packed is a real bundle with its real letter. */
async function packedForCamp(makeDisk: MakeDisk = recordingDisk): Promise<Start> {
  const files = sampleFiles();
  const medium = newMedium();
  const disk = recordingDisk(medium);
  const taken = ['logging.json', 'project.json', 'holes/MBRC007.json'];
  await disk.makeFolder('/project');
  await disk.makeFolder('/project/holes');
  for (const file of taken) {
    const made = await disk.create(`/project/${file}`);
    await made.write(new TextEncoder().encode(files[file] ?? ''));
    await made.sync();
  }
  for (const folder of ['/project/holes', '/project', '/']) await disk.syncFolder(folder);
  const known = await openDesk({
    ...faultOptions(
      makeDisk(afterKill(medium), () => undefined),
      5,
    ),
    readOnly: true,
  });
  if (!known.ok) throw new Error(known.findings[0]?.problem);
  return {
    medium,
    seen: { ...nothingSeen(), attempts: [files['project.json'] ?? ''], desks: [known.value] },
    makeDisk,
    run: async (onto, seen) => {
      const sitting = await sitDown(onto, seen);
      if (sitting === undefined) return;
      const { desk, pause, close } = sitting;
      const loaded = await loadProject(
        { folder: desk.folder(), project: desk.project(), logging: desk.logging() },
        onto,
      );
      // A fault kept project.json from being read: that is said, and nothing can be packed.
      if (!loaded.ok) {
        if (loaded.findings.every(({ problem }) => problem.trim() === ''))
          seen.unsaid.push('not loaded, no word why');
        return close();
      }
      const laid = new Map<string, Uint8Array>();
      const noting = {
        ...desk,
        writeOut: (file: string, bytes: Uint8Array) => {
          laid.set(file, bytes);
          return desk.writeOut(file, bytes);
        },
      };
      const packed = await pack(noting, loaded.value.project, [...desk.documents().values()]);
      if (packed.ok) {
        for (const [file, bytes] of laid) seen.written.push({ path: join(desk.folder(), file), bytes });
        sitting.writeOut('outbox/report.html', new TextEncoder().encode('<p>one'));
        await pause();
      } else if (packed.problem.trim() === '') seen.unsaid.push('not packed, no word why');
      await close();
    },
  };
}

/** What a command said, and what is at its hand: the desk under faults, what arrives on a disk that has none. */
async function commandAt(
  disk: Disk,
  seen: Seen,
  work: (at: AtProject, said: () => string, sitting: Sitting) => Promise<void>,
): Promise<void> {
  const sitting = await sitDown(disk, seen);
  if (sitting === undefined) return;
  const { desk } = sitting;
  const loaded = await loadProject(
    { folder: desk.folder(), project: desk.project(), logging: desk.logging() },
    disk,
  );
  if (!loaded.ok) return sitting.close();
  const heard = hear();
  const said = () => `${heard.out()}${heard.err()}`;
  await work({ outside: heard.outside, desk, ...loaded.value }, said, sitting);
  await sitting.close();
}

/** A hole changed at camp and mailed to the rig: the draft that pack made there, taken in by what `offsider receive` runs. */
async function mailTakenIn(makeDisk: MakeDisk = recordingDisk): Promise<Start> {
  const start = await packedForCamp(makeDisk);
  const camp = makeDisk(afterKill(start.medium), () => undefined);
  const opened = await openDesk({ ...faultOptions(camp, 21), person: 'KEL' });
  if (!opened.ok) throw new Error(opened.findings[0]?.problem);
  const desk = opened.value;
  const name = { kind: 'hole', id: 'MBRC007' };
  const changes: readonly Change[] = [{ patch: ['plan', 'plan'], set: { target: 'as seen in camp' } }];
  const changed = desk.submit({ what: 'target', parts: [{ document: name, changes }] });
  if (!changed.ok) throw new Error(changed.problem);
  await changed.durable;
  const loaded = await loadProject(
    { folder: desk.folder(), project: desk.project(), logging: desk.logging() },
    camp,
  );
  if (!loaded.ok) throw new Error(loaded.findings[0]?.problem);
  const packed = await pack(desk, loaded.value.project, [...desk.documents().values()]);
  if (!packed.ok) throw new Error(packed.problem);
  // On this machine's own disk, whatever disk the project lies on.
  const mail = posix.join(freshFolder().replaceAll('\\', '/'), 'from-camp.eml');
  mkdirSync(posix.dirname(mail), { recursive: true });
  writeFileSync(mail, await camp.readFile(join(desk.folder(), packed.drafts[0] ?? '')));
  return {
    ...start,
    seen: { ...start.seen, desks: [...start.seen.desks, desk] },
    run: (disk, seen) =>
      commandAt(disk, seen, async (at, said) => {
        const { desk, project } = at;
        await takeFiles(at.outside, { desk, project, disk: realDisk, mayClear: false }, [mail]);
        if (/newer than ours, taken in|merged with ours|the same as ours/.test(said()))
          seen.saved.push({ edit: changed.edit.edit, documents: [name] });
        else if (!/not saved|can't be|can’t be|cannot/.test(said()))
          seen.unsaid.push(`receive took nothing in and said: ${said()}`);
      }),
  };
}

/** The laboratory's CSV, taken in by what `offsider results` runs. */
async function csvTakenIn(makeDisk: MakeDisk = recordingDisk): Promise<Start> {
  const start = await packedForCamp(makeDisk);
  const file = join(import.meta.dirname, '../../sample-projects/mulgara-bend/laboratory/WA26-0417.csv');
  return {
    ...start,
    run: (disk, seen) =>
      commandAt(disk, seen, async (at, said) => {
        const findings = await takeCertificate(at, { file, keepGoing: true });
        const taken = [...at.desk.documents().values()].find(({ kind }) => kind === 'results');
        if (findings === undefined && taken !== undefined)
          seen.saved.push({ edit: taken.history.at(-1)?.edit ?? '', documents: [taken] });
        else if (findings?.every(({ problem, remedy }) => `${problem}${remedy}`.trim() === '') ?? true)
          seen.unsaid.push(`results took nothing in and said: ${said()}`);
      }),
  };
}

/** A document as another copy of the project changes it: an edit of camp after all that it holds. */
function atCamp(document: Document, edit: string, changes: readonly Change[]): Document {
  const deed = { edit, at: '2026-03-14T19:00:00+08:00', by: 'Kei Larsen', what: 'looked at in camp' };
  const made = apply(document, deed, changes);
  if (!made.ok) throw new Error(made.problem);
  return made.document;
}

async function cameBack(makeDisk: MakeDisk = recordingDisk): Promise<Start> {
  const start = await after(twoRows, makeDisk);
  const hole = start.seen.desks[0]?.get(HOLE) as Document;
  const row = Object.keys(hole.tables.rows ?? {})[0] ?? '';
  const copy = atCamp(hole, 'camp77-1', [{ patch: ['rows', row], set: { remark: 'seen in camp' } }]);
  return {
    ...start,
    run: async (disk, seen) => {
      const sitting = await sitDown(disk, seen);
      if (sitting === undefined) return;
      const { desk, say, takeIn, pause, close } = sitting;
      takeIn(copy, 'camp77-1');
      await pause();
      say('2–3 logged', [HOLE, [rowLogged(desk.newId(), 2)]]);
      await pause();
      takeIn(copy, 'camp77-1');
      await pause();
      await close();
    },
  };
}

/** Both sides change the hole before each hears of the other, twice: each copy is merged with what was logged meanwhile. */
async function crossing(makeDisk: MakeDisk = recordingDisk): Promise<Start> {
  const start = await after(twoRows, makeDisk);
  const hole = start.seen.desks[0]?.get(HOLE) as Document;
  const rows = Object.keys(hole.tables.rows ?? {});
  const first = atCamp(hole, 'camp77-1', [{ patch: ['rows', rows[0] ?? ''], set: { remark: 'first' } }]);
  const second = atCamp(first, 'camp77-2', [{ patch: ['rows', rows[1] ?? ''], set: { remark: 'second' } }]);
  return {
    ...start,
    run: async (disk, seen) => {
      const sitting = await sitDown(disk, seen);
      if (sitting === undefined) return;
      const { desk, say, takeIn, pause, close } = sitting;
      say('0–1 amended', [HOLE, [{ patch: ['rows', rows[0] ?? ''], set: { remark: 'ours' } }]]);
      await pause();
      takeIn(first, 'camp77-1');
      await pause();
      say('2–3 logged', [HOLE, [rowLogged(desk.newId(), 2)]]);
      await desk.snapshot();
      takeIn(second, 'camp77-2');
      await pause();
      await close();
    },
  };
}

async function resultsCame(makeDisk: MakeDisk = recordingDisk): Promise<Start> {
  const start = await after(twoRows, makeDisk);
  return {
    ...start,
    run: async (disk, seen) => {
      const sitting = await sitDown(disk, seen);
      if (sitting === undefined) return;
      const { desk, say, pause, close } = sitting;
      const lines = Array.from(
        { length: 40 },
        (_, index): Change => ({
          put: ['lines', desk.newId()],
          thing: {
            line: index + 2,
            number: `ZQ${String(index).padStart(6, '0')}`,
            reported: { 'Au ppm': '<0.01' },
          },
        }),
      );
      const header: Change = {
        put: ['certificate', 'certificate'],
        thing: {
          certificate: CERTIFICATE.id,
          file: 'WA26-0500.csv',
          sha256: 'a'.repeat(64),
          takenInAt: '2026-03-14T19:00:00+08:00',
          takenInBy: 'NOK',
          columns: [{ column: 'Au ppm', analyte: 'gold', unit: 'ppm' }],
        },
      };
      say('certificate taken in', [CERTIFICATE, [header, ...lines]]);
      await pause();
      say('2–3 logged', [HOLE, [rowLogged(desk.newId(), 2)]]);
      await pause();
      await close();
    },
  };
}
