import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { formatFinding } from '../../src/finding/finding.ts';
import { copyOfSample } from '../commands/support/outside.ts';
import { run } from './every-command.ts';
import { BOMBS, openAndClose, PLACES, projectWith } from './places.ts';

describe.each(PLACES)('in the place of %s', (place) => {
  it.each(Object.keys(BOMBS))(
    '%s keeps no one waiting: the project opens without it or is refused with its reason',
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
    'schema dictionary': (file, at) => ['schema', 'dictionary', file, '--project', at],
    'new from a dictionary': (file, at) => ['new', join(at, '../own'), '--dictionary', file],
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
