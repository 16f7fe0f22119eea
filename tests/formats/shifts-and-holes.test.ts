import { describe, expect, it } from 'vitest';
import { FORMAT, formatNeeded, readDocumentFile } from '../../src/files/document-file.ts';
import { documentBytes } from '../../src/files/print-document.ts';
import { DOCUMENT_LIMITS, readJsonText } from '../../src/files/read-json.ts';
import type { Document, Thing } from '../../src/record/document.ts';
import { SHIFT_SINCE_3 } from '../../src/shift/shift.ts';
import { sampleFiles } from '../console/support/sitting.ts';

const PATH = 'shifts/RC7_2026-03-13_DAY.json';
const read = (text: string) => {
  const json = readJsonText(new TextEncoder().encode(text), PATH, DOCUMENT_LIMITS);
  if (!json.ok) throw new Error(json.findings[0]?.problem);
  return readDocumentFile(json.value, { kind: 'shift', id: 'RC7_2026-03-13_DAY' });
};
const sample = (): Document => {
  const found = read(sampleFiles()[PATH] ?? '');
  if (!found.ok) throw new Error(found.findings[0]?.problem);
  return found.value.document;
};
const having = (document: Document, table: string, thing: Thing): Document => ({
  ...document,
  tables: { ...document.tables, [table]: { ...document.tables[table], x: thing } },
});

describe('the file of a shift', () => {
  it('is of format 1 while it holds what format 1 knows, and is read as ever', () => {
    expect(sampleFiles()[PATH]).toContain('"format": 1');
    expect(formatNeeded(sample())).toBe(1);
  });

  it.each([
    ...SHIFT_SINCE_3.tables.map((table) => [table, {}] as const),
    ...Object.entries(SHIFT_SINCE_3.fields).flatMap(([table, fields]) =>
      fields.map((field) => [table, { [field]: 'x' }] as const),
    ),
  ])(
    'is of format 3 where %s holds %j, so that an older reader asks for the newer program',
    (table, thing) => {
      const document = having(sample(), table, thing as Thing);
      expect(formatNeeded(document)).toBe(3);
      const position = { generation: 1, sequence: 1 };
      expect(new TextDecoder().decode(documentBytes({ document, position }))).toContain('"format": 3');
      const text = (sampleFiles()[PATH] ?? '').replace('"format": 1', '"format": 3');
      expect(read(text).ok).toBe(true);
    },
  );

  it('of a newer format is refused, with what to do', () => {
    const found = read((sampleFiles()[PATH] ?? '').replace('"format": 1', `"format": ${FORMAT + 1}`));
    expect(found.ok ? '' : found.findings[0]?.problem).toContain(`it has format ${FORMAT + 1}`);
  });
});

describe('the file of a hole', () => {
  const hole: Document = { kind: 'hole', id: 'x', tables: {}, history: [] };
  const row = (cell: Thing) => ({ fromMm: 0, toMm: 1000, cells: { rock: { code: 'BAS' }, field: cell } });

  it('is of format 1 while it holds what format 1 knows', () => {
    expect(formatNeeded(hole)).toBe(1);
    for (const cell of [
      { code: 'BAS', second: { code: 'SHL', percent: 30 } },
      { levels: { CHL: 2 } },
      { absent: 'none' },
    ])
      expect(formatNeeded(having(hole, 'rows', row(cell)))).toBe(1);
    expect(formatNeeded(having(hole, 'legendFields', { label: 'rock', kind: 'code', list: 'rocks' }))).toBe(
      1,
    );
    expect(formatNeeded(having(hole, 'legendCodes', { list: 'rocks', code: 'BAS', label: 'basalt' }))).toBe(
      1,
    );
  });

  it.each<readonly [string, string, Thing]>([
    ['the driller’s word on metres', 'feltByDriller', {}],
    [
      'a third rock',
      'rows',
      row({ code: 'BAS', second: { code: 'SHL', percent: 30 }, third: { code: 'CHT', percent: 9 } }),
    ],
    ['a qualifier', 'rows', row({ levels: { CHL: 2 }, qualified: { CHL: { styles: 'PER' } } })],
    ['textures', 'rows', row({ codes: { VUG: true } })],
    ['an event', 'rows', row({ events: { WST: { atMm: 600, number: 2 } } })],
    [
      'a field of textures of which no row has one',
      'legendFields',
      { label: 'texture', kind: 'codes', list: 'textures' },
    ],
    [
      'a field of events of which no row has one',
      'legendFields',
      { label: 'events', kind: 'events', list: 'events' },
    ],
    [
      'the unit of an event',
      'legendCodes',
      { list: 'events', code: 'WST', label: 'water strike', unit: 'L/s' },
    ],
  ])(
    'is of format 4 where it holds %s, so that an older reader asks for the newer program',
    (_, table, thing) => {
      expect(formatNeeded(having(hole, table, thing))).toBe(4);
    },
  );
});
