import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const SOURCE = join(import.meta.dirname, '../../src');

/** Every module of the program, without its comments. */
const MODULES: readonly (readonly [file: string, text: string])[] = readdirSync(SOURCE, { recursive: true })
  .map(String)
  .filter((file) => /\.tsx?$/.test(file))
  .map((file) => {
    const text = readFileSync(join(SOURCE, file), 'utf8');
    return [file.replaceAll('\\', '/'), text.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '')] as const;
  });

const holding = (pattern: RegExp): readonly string[] =>
  MODULES.filter(([, text]) => pattern.test(text)).map(([file]) => file);

describe('what leaves the program', () => {
  it('is looked for in all of its modules', () => {
    expect(MODULES.length).toBeGreaterThan(400);
  });

  it('goes to a terminal through the few functions that make it safe: nothing else writes to a stream', () => {
    const streams = /\b(stdout|stderr)\.write\(|console\.(log|error|warn|info)\(|writeSync\((1|2)\b/;
    expect([...holding(streams)].sort()).toEqual([
      'cli.ts',
      'commands/command-line/run.ts',
      'commands/say.ts',
      'console/terminal/mount.tsx',
      'launch.ts',
    ]);
    // Of those, what is not made safe on the spot is text of our own or comes from the painter.
    const bare = ['cli.ts', 'commands/command-line/run.ts'].flatMap((file) =>
      [...(MODULES.find(([each]) => each === file)?.[1] ?? '').matchAll(/\.write\(([^;]*)\)[;,]/g)].map(
        ([, said = '']) => said,
      ),
    );
    expect(bare.length).toBeGreaterThan(4);
    for (const said of bare)
      expect(said).toMatch(
        /^(CLEARED_LINE|safeLines\(|`[^$]*\$\{safe(Text|Lines)\([^}]*\}[^$]*`|`The sample project)/,
      );
  });

  it('goes into a CSV through the one function that defuses it: nothing else joins cells', () => {
    // Canonical JSON, colours of the terminal, what makes two runs the same, and excerpts of a line that was read.
    const others = [
      'record/json.ts',
      'console/terminal/paint/styled-cells.ts',
      'acts/take-shots.ts',
      'sampling/dispatch/receipt-read.ts',
      'sampling/laboratory/results-read.ts',
      // The names of a key in the file's own metadata, and the text of a reference system.
      'handover/parquet/parquet-file.ts',
      'survey/norths/grid-wkt.ts',
    ];
    const joining = holding(/\.join\((','|';'|'\\t'|",")\)/).filter((file) => !others.includes(file));
    expect(joining).toEqual(['finding/sheet-text.ts']);
  });

  it('runs nothing that a file names: no module evaluates, spawns or loads what it read', () => {
    // The starter runs the program beside it, and V8's code for it that its digest vouches for.
    const running = holding(/\beval\(|new Function\(|child_process|\bvm['"]|import\((?!['"])/);
    expect(running).toEqual(['launch.ts']);
  });
});

describe('what comes into the program from a disk', () => {
  /** What can read a file, of all that Node's two modules of files have. */
  const READS =
    /^(open|openSync|openAsBlob|read|readSync|readv|readvSync|readFile|readFileSync|createReadStream|cp|cpSync|copyFile|copyFileSync|promises|default|\*.*)$/;

  /** Modules that import something that can read a file, with what. */
  const readers = Object.fromEntries(
    MODULES.flatMap(([file, text]) => {
      const names = [...text.matchAll(/import ([^;]*?) from '(?:node:)?fs(?:\/promises)?'/g)].flatMap(
        ([, clause = '']) =>
          clause
            .replace(/[{}]/g, ',')
            .split(',')
            .map((name) => name.trim().replace(/^type .*| as .*/, '')),
      );
      const reading = names.filter((name) => READS.test(name));
      return reading.length === 0 ? [] : [[file, reading.sort().join()]];
    }),
  );

  it('is opened by the one guarded reader, and beside it only where no one else can have put a file', () => {
    expect(readers).toEqual({
      // The guarded reader, and a receiver's serial port: not waited for, and read up to a size and a time.
      'files/read-regular.ts': 'openSync,readSync',
      'files/read-gps.ts': 'open',
      // Makes new files to write to, and syncs folders.
      'files/real-disk.ts': 'open',
      // The system's own account of this computer and its processes.
      'files/machine.ts': 'readFileSync',
      // What was installed with the program: itself, its compiled code, its schemas, its sample project.
      'launch.ts': 'readFileSync',
      'code-cache.ts': 'readFileSync',
      'commands/program/shipped-schemas.ts': 'readFileSync',
      'commands/demo.ts': 'cpSync,readFileSync',
    });
  });

  it('comes by no other way: nothing takes Node’s modules of files but by the names that it imports', () => {
    expect(holding(/(require|import|getBuiltinModule)\(\s*['"`](node:)?fs|process\.binding/)).toEqual([]);
  });

  it('is opened on the disk itself only to make a file, never one that is there', () => {
    const text = MODULES.find(([file]) => file === 'files/real-disk.ts')?.[1] ?? '';
    const opened = [...text.matchAll(/\bopen\(([^)]*)\)/g)].map(([, given]) => given);
    // The second is a folder, to sync its names.
    expect(opened).toEqual(["path, 'ax'", "path, 'r'"]);
    const machine = MODULES.find(([file]) => file === 'files/machine.ts')?.[1] ?? '';
    for (const [, path] of machine.matchAll(/readFileSync\(([^,]*),/g)) expect(path).toMatch(/^['`]\/proc\//);
  });
});
