import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/commands/command-line/run.ts';
import { freshFolder, hear, SAMPLE } from '../commands/support/outside.ts';
import { sampleFiles } from '../console/support/sitting.ts';
import { hostileProject } from './hostile-files.ts';
import { HOSTILE, HOSTILE_TEXTS, obeyedInLines } from './vectors.ts';

/** Runs a command line; what it says on either stream, and its exit code. */
async function run(
  argv: readonly string[],
  stdin = '',
): Promise<{ readonly said: string; readonly code: number }> {
  const heard = hear(stdin);
  const code = await runCommandLine(argv, { outside: heard.outside, openConsole: async () => 0 });
  return { said: heard.out() + heard.err(), code };
}

/** Lays files out on the disk. */
function laidOut(files: Readonly<Record<string, string>>): string {
  const folder = join(freshFolder(), 'west');
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  return folder;
}

/** The hole that is being drilled stands for all: the others hold the same kinds of things, and each command reads every file. */
const LOGGED = ['MBRC003'];
const COMMANDS: readonly (readonly string[])[] = [
  ['holes'],
  ['holes', '--history', 'MBRC003'],
  ['check'],
  ['check', 'MBRC003'],
  ['shift'],
  ['schema', 'keys'],
  ['schema', 'export'],
  ['termination', '--check'],
  ['termination', '--replay', ...LOGGED],
  ...LOGGED.flatMap((hole) => [
    ['bags', hole],
    ['survey', hole],
    ['survey', hole, '--csv'],
    ['line-up', hole],
    ['termination', hole],
  ]),
];
const HAS_JSON = new Set(['holes', 'check', 'shift', 'bags', 'survey', 'line-up', 'termination']);

describe('a project in which every text is hostile', () => {
  it('comes out of every command as text and as data with nothing in it that a terminal obeys', async () => {
    const few = Object.entries(sampleFiles()).filter(
      ([path]) => !/MBRC00[124567]|RC7_2026-03-1[23]/.test(path),
    );
    const folder = laidOut(hostileProject(Object.fromEntries(few), 11).files);
    for (const command of COMMANDS) {
      const asData =
        HAS_JSON.has(command[0] ?? '') && !command.includes('--csv') ? [[...command, '--json']] : [];
      for (const argv of [command, ...asData]) {
        const { said, code } = await run([...argv, '--project', folder]);
        expect(obeyedInLines(said.replaceAll('\r\n', '\n')), argv.join(' ')).toBeUndefined();
        expect(said.length, argv.join(' ')).toBeGreaterThan(0);
        expect([0, 1], `${argv.join(' ')}: ${said.slice(0, 200)}`).toContain(code);
      }
    }
  });
});

describe('hostile lines from a pipe', () => {
  it('are refused or logged, and nothing of them reaches the terminal as it came', async () => {
    const folder = laidOut(sampleFiles());
    const lines = HOSTILE.map((text) => text.replaceAll(/[\r\n]/g, ' '));
    const remarks = lines.map((text) => `./${text}`);
    const { said, code } = await run(
      ['enter', 'MBRC003', '--keep-going', '--project', folder],
      [...lines, ...remarks].join('\n'),
    );
    expect(code).toBe(1);
    expect(obeyedInLines(said)).toBeUndefined();
    expect(
      obeyedInLines((await run(['holes', '--history', 'MBRC003', '--project', folder])).said),
    ).toBeUndefined();
  });
});

describe('what stands on the command line and in a program', () => {
  it.each(Object.entries(HOSTILE_TEXTS))('is said again only as it can be seen: %s', async (name, text) => {
    const asked = text.replaceAll('\0', '').slice(0, 200);
    const ways = [
      ['holes', '--project', SAMPLE, '--history', asked],
      ['holes', `--${asked}`],
      ['new', join(SAMPLE, 'project.json'), '--style', asked],
      ['schema', 'check', asked],
      ['schema', 'keys', '--width', asked],
    ];
    const { said, code } = await run(ways[Object.keys(HOSTILE_TEXTS).indexOf(name) % ways.length] ?? []);
    expect(obeyedInLines(said)).toBeUndefined();
    expect(code).toBe(2);
  });

  it('is refused line by line where it stands in a program, and makes no project', async () => {
    const program = join(freshFolder(), 'program.csv');
    const cell = (text: string): string => `"${text.replaceAll('"', '""')}"`;
    const lines = HOSTILE.map((text) => `${cell(text)},500000,6500000,400,270,${cell(text)},-60,120`);
    writeFileSync(program, ['hole,easting,northing,elevation,azimuth,north,dip,depth', ...lines].join('\n'));
    const folder = join(freshFolder(), 'west');
    const { said, code } = await run(['new', folder, '--program', program, '--epsg', '7850']);
    expect(code).toBe(2);
    expect(obeyedInLines(said)).toBeUndefined();
  });

  it('is refused as the name of a hole where no platform, or not every one, keeps it apart', async () => {
    const names = [
      'CON',
      'NUL',
      'PRN',
      'AUX',
      'COM1',
      'LPT9',
      'con',
      '..',
      '../X',
      'A/B',
      'A\\B',
      'A.JSON',
      'A.',
      'zqrc1',
      'COM¹',
      '',
    ];
    const program = join(freshFolder(), 'program.csv');
    const lines = names.map((name) => `"${name}",500000,6500000,400,270,true,-60,120`);
    writeFileSync(program, ['hole,easting,northing,elevation,azimuth,north,dip,depth', ...lines].join('\n'));
    const folder = join(freshFolder(), 'west');
    const { said, code } = await run(['new', folder, '--program', program, '--epsg', '7850']);
    expect(code).toBe(2);
    for (const [index] of names.entries())
      expect(said).toContain(`program.csv:${index + 2}, field hole: this is no name of a hole`);
    expect(existsSync(folder)).toBe(false);
  });
});
