import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openProject } from '../../src/commands/at-project.ts';
import { type Finding, formatFinding } from '../../src/finding/finding.ts';
import { copyOfSample, freshFolder, hear, SAMPLE } from '../commands/support/outside.ts';
import { run } from './every-command.ts';

/** Every place of a project from which something is read. */
const PLACES = [
  'project.json',
  'logging.json',
  'codes.json',
  'holes/MBRC003.json',
  'shifts/RIG3_2026-03-14_DAY.json',
  'dispatches/D1.json',
  'results/C1.json',
  'journal/000001.jsonl',
  'journal/lock.json',
  'journal/replica.json',
  'journal/kept/project.json.read.1',
] as const;

/** What can lie there in the place of a file; reading any of them as if it were one would wait, or never end. */
const BOMBS: Readonly<Record<string, (path: string) => void>> = {
  'a pipe that nobody writes to': (path) => void execFileSync('mkfifo', [path]),
  'a link to a device that never ends': (path) => symlinkSync('/dev/zero', path),
  'a link to a terminal': (path) => symlinkSync('/dev/tty', path),
  'a link out of the project': (path) => symlinkSync('/etc/hostname', path),
  'a link to itself': (path) => symlinkSync(path, path),
  'a folder': (path) => mkdirSync(path),
  'millions of line feeds': (path) => writeFileSync(path, Buffer.alloc(40 * 1024 * 1024, 0x0a)),
  'millions of brackets': (path) => writeFileSync(path, Buffer.alloc(20 * 1024 * 1024, 0x5b)),
};

/** A small project, its schema extending a file of its own, with something in one place. */
function projectWith(place: string, put: (path: string) => void): string {
  const folder = freshFolder();
  for (const file of ['project.json', 'logging.json', 'holes/MBRC003.json'])
    cpSync(join(SAMPLE, file), join(folder, file));
  if (place === 'codes.json') {
    cpSync(join(folder, 'logging.json'), join(folder, 'codes.json'));
    writeFileSync(
      join(folder, 'logging.json'),
      '{ "format": 1, "name": "logging", "extends": "codes.json" }\n',
    );
  }
  mkdirSync(dirname(join(folder, place)), { recursive: true });
  rmSync(join(folder, place), { force: true });
  put(join(folder, place));
  return folder;
}

async function openAndClose(folder: string, write: boolean): Promise<readonly Finding[]> {
  const opened = await openProject(hear().outside, { folder, write });
  if (!opened.ok) return opened.findings;
  const findings = opened.value.desk.findings();
  await opened.value.desk.close();
  return findings;
}

describe.each(PLACES)('in the place of %s', (place) => {
  it.each(Object.keys(BOMBS))(
    '%s keeps nobody waiting: the project opens without it or is refused with its reason',
    async (what) => {
      for (const write of [false, true]) {
        const folder = projectWith(place, BOMBS[what] ?? (() => {}));
        const findings = await openAndClose(folder, write);
        for (const finding of findings) {
          expect(formatFinding(finding)).not.toMatch(/^somewhere/);
          expect(finding.remedy).not.toBe('');
        }
        const quiet = ['journal/replica.json', 'journal/kept/project.json.read.1'].includes(place);
        if (!quiet && !(place === 'journal/lock.json' && !write))
          expect(findings.map((finding) => finding.place.file)).toContain(
            // What a schema extends is named where it is extended.
            place === 'codes.json' ? 'logging.json' : place,
          );
      }
    },
  );
});

describe('a file that a command is given', () => {
  const GIVEN: Readonly<Record<string, (file: string, folder: string) => readonly string[]>> = {
    readings: (file, at) => ['readings', 'MBRC003', file, '--project', at, '--field', 'arsenic', '--preview'],
    collars: (file, at) => ['collars', file, '--project', at],
    shots: (file, at) => ['survey', 'MBRC003', '--shots', file, '--run', 'magnetic', '--project', at],
    receipt: (file, at) => ['dispatch', 'receipt', 'NOK', file, '--project', at],
    results: (file, at) => ['results', file, '--project', at],
    receive: (file, at) => ['receive', file, '--project', at],
    'schema import': (file, at) => [
      'schema',
      'import',
      'rocks',
      file,
      '--project',
      at,
      '--code',
      'Code',
      '--label',
      'Label',
    ],
    'schema check': (file) => ['schema', 'check', file],
    new: (file, at) => [
      'new',
      join(at, '../made'),
      '--style',
      'orogenic-gold',
      '--program',
      file,
      '--epsg',
      '7850',
    ],
  };

  it.each(Object.keys(GIVEN))(
    'may be a pipe, a device or a folder: refused, nothing waits: %s',
    async (name) => {
      const folder = copyOfSample();
      const pipe = join(folder, '..', 'pipe.csv');
      execFileSync('mkfifo', [pipe]);
      for (const file of [pipe, '/dev/zero', folder]) {
        const { said, code } = await run(GIVEN[name]?.(file, folder) ?? []);
        expect(code).toBeGreaterThan(0);
        expect(said).toContain('it is not a file');
      }
    },
  );
});
