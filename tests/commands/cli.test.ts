import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/commands/command-line/run.ts';
import { WHAT_IT_IS_NOT } from '../../src/finding/what-it-is-not.ts';
import { offsiderBundle } from '../e2e/support/program.ts';
import { copyOfSample, freshFolder, hear, SAMPLE } from './support/outside.ts';

let program = '';
beforeAll(async () => {
  program = await offsiderBundle();
});

const running: ChildProcess[] = [];
afterEach(() => {
  for (const child of running.splice(0)) child.kill('SIGKILL');
});

/** Runs the bundle with no terminal, and gives what it said. */
function offsider(
  args: readonly string[],
  more: { readonly input?: string; readonly env?: Record<string, string> } = {},
) {
  const done = spawnSync(process.execPath, [program, ...args], {
    input: more.input ?? '',
    encoding: 'utf8',
    env: { ...process.env, ...more.env },
  });
  return { code: done.status, out: done.stdout, err: done.stderr };
}

/** Runs a command in this process, which is the same to a command that is refused; the bundle is for what a process is needed for. */
async function here(argv: readonly string[], input = '') {
  const heard = hear(input);
  const code = await runCommandLine(argv, { outside: heard.outside, openConsole: async () => 0 });
  return { code, out: heard.out(), err: heard.err() };
}

/** Everything in a project but the bookkeeping of its journal, by name. */
function contents(folder: string): Record<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) =>
    entry.isFile(),
  );
  return Object.fromEntries(
    files
      .map((entry) => join(entry.parentPath, entry.name))
      .filter((file) => !file.includes('/journal/'))
      .map((file) => [file, readFileSync(file, 'utf8')]),
  );
}

describe('the program without a terminal', () => {
  it('prints the state of a project and exits 0', () => {
    const { code, out, err } = offsider([SAMPLE]);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('MBRC003, drilling, planned 270.0° grid, dip -60.0° to 120 m');
    expect(out).toContain('Drilled 54 m, logged to 46 m, 8 m drilled and not logged');
    expect(out).toContain('advice on ending the hole, on the log to 46 m; 8 m drilled and not logged:');
  });

  it('opens the demo on a copy outside of its own folder, on the day that the sample was left', () => {
    const { code, out } = offsider(['demo']);
    const folder = /copied to (.+)/.exec(out)?.[1] ?? '';
    expect(code).toBe(0);
    expect(out).toContain('RC7: Drilling since 08:33, 0:');
    expect(contents(folder)).toEqual(
      Object.fromEntries(
        Object.entries(contents(SAMPLE)).map(([file, text]) => [file.replace(SAMPLE, folder), text]),
      ),
    );
    rmSync(join(folder, '..'), { recursive: true });
  });

  it('stamps by the clock file and gives ids by the seed, so that twice the same comes out', () => {
    const clock = join(freshFolder(), 'clock');
    writeFileSync(clock, '2026-03-14T09:31:00+08:00\n');
    const files = [1, 2].map(() => {
      const folder = copyOfSample();
      const env = { OFFSIDER_CLOCK_FILE: clock, OFFSIDER_SEED: 'twice' };
      expect(offsider(['enter', 'MBRC003', '--project', folder], { input: 'p1\n;dry\n', env }).code).toBe(0);
      return readFileSync(join(folder, 'holes/MBRC003.json'), 'utf8');
    });
    expect(files[0]).toBe(files[1]);
    expect(files[0]).toContain('2026-03-14T09:31:00+08:00');
  });

  it('says which command it does not know, on stderr, and exits 2', () => {
    const { code, out, err } = offsider(['holes', '--nosuch']);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain("unknown option '--nosuch'");
  });

  it('gives its version on stdout and exits 0', () => {
    const { version } = JSON.parse(readFileSync(join(SAMPLE, '../../package.json'), 'utf8'));
    expect(offsider(['--version'])).toEqual({ code: 0, out: `${version}\n`, err: '' });
  });

  it('gives help on stdout and exits 0', () => {
    const { code, out, err } = offsider(['--help']);
    expect([code, err]).toEqual([0, '']);
    expect(out.trimEnd().endsWith(WHAT_IT_IS_NOT)).toBe(true);
    for (const name of [
      'demo',
      'new',
      'holes',
      'enter',
      'check',
      'bags',
      'survey',
      'line-up',
      'termination',
      'shift',
      'schema',
    ])
      expect(out).toMatch(new RegExp(`^ {2}${name} `, 'm'));
  });
});

describe('opening is refused with a plain message, exit 2 and nothing changed', () => {
  it('where there is no project', async () => {
    const folder = freshFolder();
    const refused = [
      offsider([folder]),
      await here(['holes', '--project', folder]),
      await here(['enter', 'X', '--project', folder]),
    ];
    for (const { code, out, err } of refused) {
      expect([code, out]).toEqual([2, '']);
      expect(err).toContain('no project.json in it');
      expect(err).toContain('offsider new <folder>');
    }
    expect(readdirSync(folder)).toEqual([]);
  });

  it('where the schema is broken: file, line, field and remedy', async () => {
    const folder = copyOfSample();
    const text = readFileSync(join(folder, 'logging.json'), 'utf8');
    writeFileSync(join(folder, 'logging.json'), text.replace('"pair": "vx"', '"pair": "BA"'));
    const before = contents(folder);
    const { code, err } = await here(['enter', 'MBRC003', '--project', folder], '.\n');
    expect(code).toBe(2);
    expect(err).toMatch(/^logging\.json:10:\d+, list rocks, code VBR: /);
    expect(err.split('\n').length).toBeGreaterThan(2);
    expect(contents(folder)).toEqual(before);
    expect(readdirSync(folder)).not.toContain('journal');
  });

  it('where project.json is no JSON', () => {
    const folder = copyOfSample();
    writeFileSync(join(folder, 'project.json'), '{ "format": 1,\n "name": }');
    const { code, err } = offsider([folder]);
    expect(code).toBe(2);
    expect(err).toMatch(/^project\.json:2:/);
  });

  it('where the hole is unknown', async () => {
    const folder = copyOfSample();
    const before = contents(folder);
    const { code, err } = await here(['enter', 'MBRC030', '--project', folder], '.\n');
    expect([code, err]).toEqual([
      2,
      'MBRC030: the project has no such hole\n  It has MBRC001, MBRC002, MBRC002A, MBRC003, MBRC004, MBRC005, MBRC006, MBRC007.\n',
    ]);
    expect(contents(folder)).toEqual(before);
  });

  it('where the folder can’t be written: its journal has no place', async () => {
    const folder = copyOfSample();
    // A file where the journal's folder should be stops root, too.
    writeFileSync(join(folder, 'journal'), '');
    const before = contents(folder);
    const { code, err } = await here(['enter', 'MBRC003', '--project', folder], '.\n');
    expect(code).toBe(2);
    expect(err).toContain('cannot be written');
    expect(contents(folder)).toEqual(before);
  });

  it('where another console holds the project', async () => {
    const folder = copyOfSample();
    const child = spawn(process.execPath, [program, 'enter', 'MBRC003', '--project', folder]);
    running.push(child);
    child.stdin.write('p1\n');
    await new Promise((ready) => child.stdout.once('data', ready));
    const { code, err } = offsider(['enter', 'MBRC003', '--project', folder], { input: '.\n' });
    expect(code).toBe(2);
    expect(err).toContain('NOK');
    expect(err.trim().split('\n').length).toBeGreaterThan(1);
    const ended = new Promise((done) => child.once('exit', done));
    child.stdin.end('.\n');
    expect(await ended).toBe(0);
  });

  it('where a file is from a newer version', async () => {
    const folder = copyOfSample();
    const file = join(folder, 'holes/MBRC004.json');
    writeFileSync(file, readFileSync(file, 'utf8').replace(/"format": ?1/, '"format": 99'));
    const before = contents(folder);
    for (const args of [
      ['holes', '--project', folder],
      ['enter', 'MBRC003', '--project', folder],
    ]) {
      const { code, out, err } = await here(args, '.\n');
      expect([code, out]).toEqual([2, '']);
      expect(err).toMatch(/^holes\/MBRC004\.json/);
    }
    expect(contents(folder)).toEqual(before);
  });
});

describe('a clock file that can’t be used', () => {
  const given = (clock: string) => offsider([SAMPLE], { env: { OFFSIDER_CLOCK_FILE: clock } });

  it('is refused in words before anything is opened: without a stamp, not there, a folder, a device, too large', () => {
    const folder = freshFolder();
    mkdirSync(folder, { recursive: true });
    const clock = join(folder, 'clock');
    const text = (content: string) => {
      writeFileSync(clock, content);
      return given(clock);
    };
    const all = [text('noon'), text('2026-13-14T07:42:10+08:00'), text('2026'.repeat(100_000))];
    expect(all[0]?.err).toContain('the clock file has no stamp: "noon"');
    expect(all[0]?.err).toContain('Write a stamp like 2026-03-14T07:42:10+08:00 into it');
    all.push(given(join(folder, 'gone')), given(folder), given('/dev/zero'));
    for (const { code, out, err } of all) {
      expect([code, out]).toEqual([2, '']);
      expect(err).toContain('the clock file');
      expect(err).not.toMatch(/ {4}at |fault of its own/);
    }
  });
});
