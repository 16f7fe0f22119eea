import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { documentFault, documentFileShape } from '../../src/files/document-file.ts';
import { type JournalLine, lineFault } from '../../src/files/journal-line.ts';
import { holdToShape } from '../../src/files/json-shape.ts';
import { projectSettings } from '../../src/project/settings.ts';
import type { Document } from '../../src/record/document.ts';
import { SAMPLE } from '../commands/support/outside.ts';
import { LONG_RUN } from '../support/long-run.ts';

/** What may stand where anything else should. */
const JUNK = [
  null,
  '',
  'x',
  'no such word',
  -1,
  1.5,
  99_999_999,
  true,
  [],
  {},
  ['x'],
  { x: 1 },
  'y'.repeat(20_000),
];

/** The words of the library that checks shapes: none of them helps anybody on a rig. */
const LIBRARY =
  /Invalid|expected|received|Too (small|big)|Unrecognized|must match|pattern|\/\^|undefined|NaN|\[object/;

/** The default suite spoils one place in so many. */
const PLACES_A_LOOK = 6;

type Branch = Record<string, unknown> | unknown[];

/** Every value of a JSON tree in turn replaced by each piece of junk, or taken out; in the default suite a part of them. */
function eachSpoiled(tree: unknown, look: (path: string) => void): void {
  let places = 0;
  const visit = (branch: Branch, path: string): void => {
    for (const key of Object.keys(branch)) {
      const place = branch as Record<string, unknown>;
      const was = place[key];
      const skipped = !LONG_RUN && places++ % PLACES_A_LOOK !== 0;
      for (const junk of skipped ? [] : JUNK) {
        place[key] = junk;
        look(`${path}.${key} = ${JSON.stringify(junk).slice(0, 20)}`);
      }
      if (!skipped && !Array.isArray(branch)) {
        delete place[key];
        look(`${path} without ${key}`);
        place[key] = was;
        place.surplus = 1;
        look(`${path} with a member too many`);
        delete place.surplus;
      }
      place[key] = was;
      if (typeof was === 'object' && was !== null) visit(was as Branch, `${path}.${key}`);
    }
  };
  visit(tree as Branch, '');
}

const sample = (file: string): Record<string, unknown> =>
  JSON.parse(readFileSync(join(SAMPLE, file), 'utf8')) as Record<string, unknown>;

/** The first few things of each table and the first entries of the history: each noun once or twice. */
function small(file: string): Record<string, unknown> {
  const whole = sample(file);
  const tables = whole.tables as Record<string, Record<string, unknown>>;
  const few = Object.entries(tables).map(([table, things]) => [
    table,
    Object.fromEntries(Object.entries(things).slice(0, 2)),
  ]);
  return { ...whole, tables: Object.fromEntries(few), history: (whole.history as unknown[]).slice(0, 2) };
}

const DOCUMENTS = ['holes/MBRC001.json', 'shifts/RC7_2026-03-14_DAY.json'];

describe('whatever is wrong with the shape of what is given', () => {
  it.each<[string, Record<string, unknown>, unknown]>([
    ['project.json', sample('project.json'), projectSettings],
    ...DOCUMENTS.map((file): [string, Record<string, unknown>, unknown] => [
      file,
      small(file),
      documentFileShape,
    ]),
  ])('is said in plain words, with a remedy: %s', (file, tree, shape) => {
    let told = 0;
    eachSpoiled(tree, (what) => {
      const held = holdToShape({ file, text: '{}', value: tree }, shape as never);
      if (held.ok) return;
      for (const { problem, remedy } of held.findings) {
        told += 1;
        expect(`${problem}. ${remedy}`, what).not.toMatch(LIBRARY);
      }
    });
    expect(told).toBeGreaterThan(LONG_RUN ? 500 : 100);
  });

  it.each(DOCUMENTS)('is said in plain words where an edit is refused for it: %s', (file) => {
    const tree = small(file);
    let told = 0;
    for (const [table, things] of Object.entries(tree.tables as Record<string, Branch>)) {
      const ids = Object.keys(things).map((id) => [table, id] as const);
      eachSpoiled(things, (what) => {
        const fault = documentFault(tree as unknown as Document, ids);
        if (fault === undefined) return;
        told += 1;
        expect(fault, what).not.toMatch(LIBRARY);
        expect(fault).toMatch(new RegExp(`^(${table} |a \\w+ needs its ${table})`));
      });
    }
    expect(told).toBeGreaterThan(LONG_RUN ? 200 : 40);
  });

  it('is said in plain words where a line would not read back from the journal', () => {
    const line = {
      seq: 3,
      safe: 2,
      links: [{ onto: '', makes: 'ab' }],
      edit: {
        edit: 'k3f9-1',
        at: '2026-03-14T08:00:00+08:00',
        by: 'AR',
        what: 'a row',
        parts: [
          {
            document: { kind: 'hole', id: 'ZQRC001' },
            changes: [
              { put: ['rows', 'k3f9-2'], thing: { fromMm: 0 } },
              { patch: ['rows', 'k3f9-2'], unset: ['remark'] },
            ],
          },
        ],
      },
    };
    let told = 0;
    eachSpoiled(line, (what) => {
      const fault = lineFault(line as unknown as JournalLine);
      if (fault === undefined) return;
      told += 1;
      expect(fault, what).not.toMatch(LIBRARY);
    });
    expect(told).toBeGreaterThan(LONG_RUN ? 50 : 10);
  });
});
