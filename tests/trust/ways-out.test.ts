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
