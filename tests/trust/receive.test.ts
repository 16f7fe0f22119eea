import {
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Entry } from '../../src/record/document.ts';
import { sealed } from '../../src/record/hash.ts';
import { freshFolder, SAMPLE } from '../commands/support/outside.ts';
import { sampleFiles } from '../console/support/sitting.ts';
import { run } from './every-command.ts';
import { hostileDocument } from './hostile-files.ts';
import { MISREAD } from './misread.ts';
import { HOSTILE, HOSTILE_TEXTS, obeyedInLines } from './vectors.ts';

const FILE = 'holes/MBRC003.json';
const SAMPLE_HOLE = readFileSync(join(SAMPLE, FILE), 'utf8');

/** A project with its one hole, as text by path; and a folder beside it in which something arrives. */
function project(): { readonly folder: string; readonly inbox: string } {
  const folder = join(freshFolder(), 'west');
  mkdirSync(join(folder, 'holes'), { recursive: true });
  for (const file of ['project.json', 'logging.json', FILE])
    writeFileSync(join(folder, file), sampleFiles()[file] ?? '');
  return { folder, inbox: freshFolder() };
}

/** Files of the project's data below a folder with their bytes; the journal's own files aside. */
function dataOf(folder: string): Readonly<Record<string, string>> {
  const files = readdirSync(folder, { recursive: true })
    .map(String)
    .filter((file) => !file.startsWith('journal') && statSync(join(folder, file)).isFile());
  return Object.fromEntries(files.map((file) => [file, readFileSync(join(folder, file), 'utf8')]));
}

/** Takes a file in that must be refused: with its name and a remedy, nothing that a terminal obeys, and nothing changed. */
async function refused(put: (path: string) => void, name = 'arrived.json'): Promise<string> {
  const { folder, inbox } = project();
  const before = dataOf(folder);
  put(join(inbox, name));
  const { said, code } = await run(['receive', join(inbox, name), '--project', folder]);
  expect(code).toBe(1);
  expect(obeyedInLines(said)).toBeUndefined();
  expect(said).toMatch(/\n {2}\S/);
  expect(said).not.toMatch(/fault of its own|undefined|\[object/);
  expect(said.length).toBeLessThan(30_000);
  expect(dataOf(folder)).toEqual(before);
  return said;
}

const text = (json: unknown) => (path: string) => writeFileSync(path, JSON.stringify(json));
interface HoleFile {
  id: string;
  kind: string;
  format: number;
  tables: Record<string, Record<string, Record<string, unknown>>>;
  history: Entry[];
}
const hole = (): HoleFile => JSON.parse(SAMPLE_HOLE) as HoleFile;
const but = (more: Readonly<Record<string, unknown>>): unknown => ({ ...hole(), ...more });

describe('a file that arrives', () => {
  it.each(MISREAD)('is refused and nothing is changed: %s', async (_what, bytes) => {
    await refused((path) => writeFileSync(path, bytes));
  });

  it.each([
    ...['../../MBRC003', '..', '.', '', '/etc/passwd', 'C:\\MBRC003', 'holes/MBRC003', 'mbrc003', 'Mbrc003'],
    ...[
      'CON',
      'nul',
      'COM1',
      'LPT9',
      'COM¹',
      'AUX',
      'PRN',
      'MBRC003.',
      'MBRC003 ',
      'MBRC003.json',
      'A'.repeat(41),
    ],
    ...[
      'MBRC003\u0000',
      'MBRC003\u202e',
      'ＭＢＲＣ００３',
      '__proto__',
      'constructor',
      '%2e%2e',
      '~',
      '-MBRC',
      'A:B',
      'A*',
    ],
    ...HOSTILE.slice(0, 12),
  ])('under a name that no file of ours can have is refused: %j', async (id) => {
    await refused(text(but({ id })));
  });

  it.each<[string, unknown]>([
    ['a kind that is none', but({ kind: 'project' })],
    ['a kind that every object has', but({ kind: 'constructor' })],
    ['a newer format', but({ format: 99 })],
    ['a format of a fraction', but({ format: 1.5 })],
    ['no header', but({ tables: {} })],
    ['a table that no hole has', but({ tables: { ...hole().tables, secrets: { a: {} } } })],
    [
      'a row upside down without a history',
      but({ history: [], tables: { rows: { 'k-1': { fromMm: 2, toMm: 1 } } } }),
    ],
    ['a history that is not a list', but({ history: { 0: {} } })],
    ['a history with an entry taken out', but({ history: hole().history.filter((_, index) => index !== 4) })],
    ['a history in another order', but({ history: [...hole().history].reverse() })],
    ['an entry of another person', but({ history: hole().history.map((entry) => ({ ...entry, by: 'XX' })) })],
    [
      'an entry that follows two',
      but({ history: hole().history.map((entry) => ({ ...entry, follows: ['a', 'b'] })) }),
    ],
    ['an entry twice', but({ history: hole().history.flatMap((entry) => [entry, entry]) })],
    [
      'hashes that are not hashes',
      but({ history: hole().history.map((entry) => ({ ...entry, hash: HOSTILE[0] })) }),
    ],
    ['a history of another hole of that name', but({ history: [otherMaking()], tables: otherTables() })],
  ])('that holds %s is refused', async (_what, json) => {
    await refused(text(json));
  });

  it('whose history fits itself and whose things would not be kept is refused', async () => {
    const { history } = hole();
    const last = history.at(-1);
    if (last === undefined) throw new Error('the hole has a history');
    const { hash, ...rest } = last;
    const bad = sealed({
      ...rest,
      edit: 'camp-1',
      follows: [hash],
      changes: [{ put: ['rows', 'camp-2'], thing: { fromMm: 'deep', __note: 1 } }],
    } as never);
    const tables = hole().tables;
    const rows = { ...tables.rows, 'camp-2': { fromMm: 'deep', __note: 1 } };
    await refused(text(but({ history: [...history, bad], tables: { ...tables, rows } })));
  });

  it.each([
    ['a folder', (path: string) => mkdirSync(path)],
    ['nothing', () => {}],
    ['a link out of its folder', (path: string) => symlinkSync('/etc/passwd', path)],
    ['a device that never ends', (path: string) => symlinkSync('/dev/zero', path)],
    ['a link to itself', (path: string) => symlinkSync(path, path)],
    [
      'a file of 100 MB',
      (path: string) => {
        writeFileSync(path, '');
        truncateSync(path, 100 * 1024 * 1024);
      },
    ],
  ])('that is %s is refused', async (_what, put) => {
    await refused(put);
  });

  it.each(Object.entries(HOSTILE_TEXTS).filter(([, name]) => !/[/\0]/.test(name) && name.length < 100))(
    'under a hostile name of its own is named as it can be seen: %s',
    async (_what, name) => {
      await refused((path) => writeFileSync(path, '{'), `${name}.json`);
    },
  );

  it('with hostile words in every text of a new hole is taken in, and shown as it can be seen', async () => {
    const { folder, inbox } = project();
    const path = join(inbox, 'hole.json');
    writeFileSync(path, hostileDocument(sampleFiles()['holes/MBRC004.json'] ?? '', 3).text);
    const { said, code } = await run(['receive', path, '--project', folder]);
    expect(obeyedInLines(said)).toBeUndefined();
    expect(said).toContain('MBRC004: new here, taken in');
    expect(code).toBe(0);
    const shown = await run(['holes', '--history', 'MBRC004', '--project', folder]);
    expect(obeyedInLines(shown.said)).toBeUndefined();
    expect(shown.said).toMatch(/edited outside/);
  });
});

/** The making of a hole under the same name by someone else, with the hash that it must have. */
function otherMaking(): Entry {
  return sealed({
    edit: 'camp-1',
    at: '2026-03-01T08:00:00+08:00',
    by: 'KL',
    what: 'hole MBRC003 planned',
    follows: [],
    changes: [{ put: ['hole', 'hole'], thing: otherTables().hole.hole }],
  } as never);
}

function otherTables() {
  const header = hole().tables.hole?.hole ?? {};
  return { hole: { hole: { ...header, state: 'planned' } } } as const;
}
