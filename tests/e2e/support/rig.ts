import { createHash } from 'node:crypto';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { openPty, type Pty, type PtyOptions } from './pty.ts';

/** A laptop on the rig: a project in a folder of its own, a clock that the test moves, and consoles in terminals. */
export interface Rig {
  /** Folder of the project. */
  readonly folder: string;
  /** Starts the program on the project in a terminal; `args` stand behind the folder. */
  open(args?: readonly string[], options?: Partial<PtyOptions> & { readonly seed?: string }): Pty;
  /** Lets minutes pass on the program's clock. */
  pass(minutes: number): void;
  /** Makes the program's clock unreadable, which it can only take for a fault. */
  breakClock(): void;
  read(path: string): string;
  write(path: string, text: string): void;
  /** Path and content hash of every file of the project: equal where nothing has changed. */
  contents(): Readonly<Record<string, string>>;
  /** Ends every console that still runs, and takes the folder away. */
  remove(): Promise<void>;
}

const START_MS = Date.parse('2026-03-16T06:30:00+08:00');

/** A rig with a project of these files, by path; as a rule the settings and codes alone, and no hole yet. */
export function newRig(program: string, files: Readonly<Record<string, string>>): Rig {
  const place = mkdtempSync(join(tmpdir(), 'offsider-rig-'));
  const folder = join(place, 'project');
  const clock = join(place, 'clock');
  mkdirSync(folder);
  const write = (path: string, text: string) => {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  };
  for (const [path, text] of Object.entries(files)) write(path, text);
  let minutes = 0;
  const pass = (more: number) => {
    minutes += more;
    const local = new Date(START_MS + (8 * 60 + minutes) * 60_000).toISOString().slice(0, 19);
    // Renamed into place: the program reads the clock at any moment, and never half of it.
    writeFileSync(`${clock}.next`, `${local}+08:00\n`);
    renameSync(`${clock}.next`, clock);
  };
  pass(0);
  const open: Pty[] = [];
  return {
    folder,
    open(args = [], { seed = 'whole hole', env, ...options } = {}) {
      const pty = openPty({
        command: process.execPath,
        args: [program, folder, ...args],
        env: { OFFSIDER_CLOCK_FILE: clock, OFFSIDER_SEED: seed, TZ: 'UTC', ...env },
        ...options,
      });
      open.push(pty);
      return pty;
    },
    pass,
    breakClock: () => rmSync(clock),
    read: (path) => readFileSync(join(folder, path), 'utf8'),
    write,
    contents: () => contentsOf(folder),
    async remove() {
      for (const pty of open) {
        pty.kill();
        await pty.exited;
      }
      rmSync(place, { recursive: true, force: true });
    },
  };
}

function contentsOf(folder: string): Readonly<Record<string, string>> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  return Object.fromEntries(
    entries.map((entry) => {
      const path = join(entry.parentPath, entry.name);
      const hash = entry.isFile() ? createHash('sha256').update(readFileSync(path)).digest('hex') : 'folder';
      return [relative(folder, path), hash];
    }),
  );
}
