import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path/posix';
import { foundOn } from '../../../src/console/found.ts';
import { perform } from '../../../src/console/perform.ts';
import type { Happening } from '../../../src/console/reduce.ts';
import { isTooSmall, screenLines, settled } from '../../../src/console/screens/screen.ts';
import { initialState, type State } from '../../../src/console/state.ts';
import { type ConsoleStore, createConsoleStore } from '../../../src/console/store.ts';
import { type KeyEvent, keyPress } from '../../../src/console/terminal/input/keys.ts';
import { themeFor } from '../../../src/console/theme.ts';
import { addCodeOnRig, changeCodeOnRig, changeFieldOnRig } from '../../../src/desk/add-code.ts';
import { type Received, receiveFiles } from '../../../src/desk/arriving/receive-files.ts';
import { type Desk, openDesk } from '../../../src/desk/desk.ts';
import { loadProject } from '../../../src/desk/load-project.ts';
// Loaded when first packed; a story that ends before that would leave it half loaded for the next one.
import '../../../src/desk/packing/pack.ts';
import { packNamed } from '../../../src/desk/packing/pack-named.ts';
import type { Disk } from '../../../src/files/disk.ts';
import { readGps } from '../../../src/files/read-gps.ts';
import { realDisk } from '../../../src/files/real-disk.ts';
import { instantMs, offsetMin, type Stamp } from '../../../src/quantity/stamp.ts';
import type { Document } from '../../../src/record/document.ts';
import { newMedium } from '../../faults/medium.ts';
import { recordingDisk } from '../../faults/recording-disk.ts';

const SAMPLE = join(import.meta.dirname, '../../../sample-projects/mulgara-bend');
const PLAIN = themeFor({ colour: false, ascii: false });

/** A console at a real desk over a disk in memory: everything but the terminal and the bytes of keys. */
export interface Sitting {
  /** Types characters, each a read of its own. */
  readonly type: (text: string) => void;
  /** Presses named keys, each a read of its own. */
  readonly press: (...names: string[]) => void;
  /** Types a line and Enter. */
  readonly enter: (text: string) => void;
  /** Characters that arrive in one read; `\r` is Enter. A paste of keys or a scanner. */
  readonly burst: (text: string) => void;
  /** Lets minutes pass. */
  readonly wait: (minutes: number) => void;
  /** Anything that is not a key: the disk's answer, a word from outside. */
  readonly happen: (happening: Happening) => void;
  readonly state: () => State;
  readonly hole: (id: string) => Document;
  /** Gives the window another size. */
  readonly resize: (columns: number, rows: number) => void;
  /** The screen as plain lines, in the window's size unless another is given. */
  readonly screen: (columns?: number, rows?: number) => readonly string[];
  /** The bytes of a file on the disk. */
  readonly file: (path: string) => Promise<Uint8Array>;
  /** Everything on the disk, and the console open on it again, by someone else where initials are given. */
  readonly reopen: (as?: string) => Promise<Sitting>;
  /** How often the console was left. */
  readonly left: () => number;
  readonly desk: Desk;
}

/** Files of a project by path, as text. */
export type Files = { readonly [path: string]: string };

/** The sample project as files, read once. */
export function sampleFiles(): Files {
  sample ??= readSample();
  return sample;
}

let sample: Files | undefined;

function readSample(): Files {
  const names = readdirSync(SAMPLE, { recursive: true, withFileTypes: true }).filter((entry) =>
    entry.isFile(),
  );
  return Object.fromEntries(
    names.map((entry) => {
      const path = join(entry.parentPath, entry.name);
      return [path.slice(SAMPLE.length + 1), readFileSync(path, 'utf8')];
    }),
  );
}

/** The sample project without its holes and shifts: settings and codes only. */
export function emptySample(): Files {
  return Object.fromEntries(Object.entries(sampleFiles()).filter(([path]) => !path.includes('/')));
}

/** Opens a console on files. */
export async function sitDown(
  files: Files,
  at = '2026-03-14T08:00:00+08:00',
  rig = 'RC7',
  person = 'NOK',
): Promise<Sitting> {
  const disk = recordingDisk(newMedium());
  await disk.makeFolder('/project');
  for (const folder of new Set(Object.keys(files).flatMap((path) => path.split('/').slice(0, -1))))
    await disk.makeFolder(`/project/${folder}`);
  for (const [path, text] of Object.entries(files)) {
    const file = await disk.create(`/project/${path}`);
    await file.write(new TextEncoder().encode(text));
    await file.sync();
    await file.close();
  }
  return openOn(disk, at as Stamp, rig, person);
}

/** Opens a console on a project that is there on the real disk, with a clock whose offset may change while it is open. */
export function sitAt(
  folder: string,
  at: Stamp,
  { rig, person, seed, offsetAt }: Pick<Place, 'offsetAt'> & { rig: string; person: string; seed: number },
): Promise<Sitting> {
  return openOn(realDisk, at, rig, person, seed, { folder, offsetAt });
}

/** Where a project is, and how far local time is ahead at an instant; the offset of the start where nothing is given. */
interface Place {
  readonly folder: string;
  readonly offsetAt?: ((ms: number) => number) | undefined;
}

async function openOn(
  disk: Disk,
  start: Stamp,
  rig: string,
  person: string,
  seed = 0,
  { folder, offsetAt = () => offsetMin(start) }: Place = { folder: '/project' },
): Promise<Sitting> {
  let ms = instantMs(start);
  let window = { columns: 100, rows: 29 };
  let random = seed;
  let left = 0;
  const opened = await openDesk({
    folder,
    person,
    clock: { nowMs: () => ms, offsetMin: () => offsetAt(ms) },
    random: (bytes) => Uint8Array.from({ length: bytes }, () => Math.imul(random++, 0x9e3779b1) >>> 24),
    disk,
    takeOver: true,
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  const desk = opened.value;
  const loaded = await loadProject({ folder, project: desk.project(), logging: desk.logging() }, disk);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.findings));
  const store: ConsoleStore = createConsoleStore(
    initialState({
      project: loaded.value.project,
      documents: desk.documents(),
      person,
      rig,
      now: desk.now(),
      readOnly: undefined,
      found: foundOn(desk, loaded.value)(),
    }),
    {
      newId: desk.newId,
      now: desk.now,
      perform: (state, effect) =>
        perform(state, effect, {
          desk,
          leave: () => {
            left += 1;
          },
          suspend: () => {},
          repaint: () => {},
          addCode: (list, entry) => addCodeOnRig(desk, list, entry, disk),
          changeField: (field, change) => changeFieldOnRig(desk, field, change, disk),
          changeCode: (list, code, change) => changeCodeOnRig(desk, list, code, change, disk),
          pack: (project, asked) => packNamed(desk, project, asked),
          receive: async (project, file, mayClear) => {
            const received: Received[] = [];
            const at = { desk, project, disk: realDisk, mayClear };
            await receiveFiles(at, [file], (each) => received.push(each));
            return received;
          },
          folderTyped: (text) => text,
          readGps: (path) => readGps(path, { forMs: 500, sentences: 3 }),
          happen: (happening) => store.happen(happening),
        }),
      settle: (state) => settled(state, window, PLAIN),
      canBeSeen: () => !isTooSmall(window),
      later: setImmediate,
    },
  );
  const state = (): State => store.store.getState();
  const typed = (text: string): readonly KeyEvent[] =>
    [...text].map((each): KeyEvent => (each === '\r' ? keyPress('enter') : { kind: 'text', text: each }));
  return {
    type: (text) => {
      for (const event of typed(text)) store.keys([event]);
    },
    press: (...names) => {
      for (const name of names) store.keys([keyPress(name)]);
    },
    enter: (text) => {
      for (const event of [...typed(text), keyPress('enter')]) store.keys([event]);
    },
    burst: (text) => store.keys(typed(text)),
    wait: (minutes) => {
      ms += minutes * 60_000;
      store.happen({ kind: 'minute', now: desk.now() });
    },
    happen: store.happen,
    state,
    hole: (id) => {
      const document = state().documents.get(`hole/${id}`);
      if (document === undefined) throw new Error(`no hole ${id}`);
      return document;
    },
    resize: (columns, rows) => {
      window = { columns, rows: rows - 1 };
    },
    screen: (columns = window.columns, rows = window.rows + 1) =>
      screenLines(state(), { columns, rows: rows - 1 }, PLAIN).map((line) =>
        line.map((span) => span.text).join(''),
      ),
    file: (path) => disk.readFile(`${folder}/${path}`),
    reopen: async (as = person) => {
      await desk.close();
      return openOn(disk, desk.now(), rig, as, random + 1, { folder, offsetAt });
    },
    left: () => left,
    desk,
  };
}
