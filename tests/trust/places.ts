import { execFileSync } from 'node:child_process';
import { cpSync, linkSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { openProject } from '../../src/commands/at-project.ts';
import type { Finding } from '../../src/finding/finding.ts';
import { freshFolder, hear, SAMPLE } from '../commands/support/outside.ts';

/** Every place of a project from which something is read. */
export const PLACES = [
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
export const BOMBS: Readonly<Record<string, (path: string) => void>> = {
  'a pipe that no one writes to': (path) => void execFileSync('mkfifo', [path]),
  'a link to a device that never ends': (path) => symlinkSync('/dev/zero', path),
  'a link to a terminal': (path) => symlinkSync('/dev/tty', path),
  'a link out of the project': (path) => symlinkSync('/etc/hostname', path),
  'a link to itself': (path) => symlinkSync(path, path),
  'a folder': (path) => mkdirSync(path),
  'millions of line feeds': (path) => linkSync(longFile('\n', 40), path),
  'millions of brackets': (path) => linkSync(longFile('[', 20), path),
};

const long = new Map<string, string>();
process.on('exit', () => {
  for (const file of long.values()) rmSync(dirname(file), { recursive: true, force: true });
});

/** A file of so many megabytes of one character: written once, and linked to wherever it is tried. */
function longFile(character: string, megabytes: number): string {
  const file = long.get(character) ?? join(mkdtempSync(join(tmpdir(), 'offsider-long-')), 'file');
  if (!long.has(character)) writeFileSync(file, Buffer.alloc(megabytes * 1024 * 1024, character));
  long.set(character, file);
  return file;
}

/** A small project, its schema extending a file of its own, with something in one place. */
export function projectWith(place: string, put: (path: string) => void): string {
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

export async function openAndClose(folder: string, write: boolean): Promise<readonly Finding[]> {
  const opened = await openProject(hear().outside, { folder, write });
  if (!opened.ok) return opened.findings;
  const findings = opened.value.desk.findings();
  await opened.value.desk.close();
  return findings;
}
