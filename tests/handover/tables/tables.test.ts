import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Column, text } from '../../../src/handover/tables/column.ts';
import { defineTable, type MadeTable, makeTable } from '../../../src/handover/tables/table.ts';
import { csvFiles } from '../../../src/handover/tables/table-files.ts';
import { TABLES, tablesOf } from '../../../src/handover/tables/tables.ts';
import { tableCsv } from '../../../src/handover/tables/write-csv.ts';
import { tablesJson } from '../../../src/handover/tables/write-json.ts';
import type { Document } from '../../../src/record/document.ts';
import { qualifiedIn } from '../../../src/value/cell.ts';
import { holeWith, rod, row } from '../../standing/support/hole.ts';
import { schemaWithRows } from '../../support/arbitrary-schema.ts';
import { runs } from '../../support/long-run.ts';
import { RUN_BY_A_SPREADSHEET } from '../../trust/cells.ts';
import { HOSTILE } from '../../trust/vectors.ts';
import { certificate, made, NOW, projectWith, rowsIn, sampleDocument } from './support.ts';

const SAMPLE = [
  ...['MBRC001', 'MBRC002', 'MBRC002A', 'MBRC003', 'MBRC004'].map((id) => sampleDocument('holes', id)),
  ...['RC7_2026-03-12_DAY', 'RC7_2026-03-14_DAY'].map((id) => sampleDocument('shifts', id)),
  sampleDocument('dispatches', 'D2026-03-14-NOK'),
  certificate('WA1', [
    ['MB000121', '0.42'],
    ['MB000122', '<0.01'],
    ['MB000123', '>100'],
    ['MB000124', ''],
  ]),
];

/** What a program that knows nothing of ours makes of a CSV: the text of each cell by the name of its column. */
function readBack(csv: string): readonly Readonly<Record<string, string>>[] {
  return parse(csv, { columns: true, record_delimiter: '\r\n' }) as Record<string, string>[];
}

/** A cell as it was before it was written, by the type that the declaration gives it. */
function asTyped(cell: string, type: string): unknown {
  if (cell === '') return null;
  if (type === 'number' || type === 'integer') return Number(cell);
  if (type === 'boolean') return cell === 'true';
  return /^'+[=+\-@\t\r\n＝＋－＠]/.test(cell) ? cell.slice(1) : cell;
}

/** Rows of a CSV by the declared types, to be compared with the JSON of the same table. */
function typed(table: MadeTable): readonly unknown[] {
  return readBack(tableCsv(table)).map((cells) =>
    Object.fromEntries(
      Object.entries(table.columns).map(([name, { type }]) => [name, asTyped(cells[name] ?? '?', type)]),
    ),
  );
}

/** True of a value that a column may hold. */
function fits(value: unknown, { type, empty }: Column): boolean {
  if (value === undefined) return empty !== undefined;
  if (type === 'integer') return Number.isInteger(value);
  if (type === 'instant') return /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d$/.test(String(value));
  if (type === 'date') return /^\d{4}-\d\d-\d\d$/.test(String(value));
  return typeof value === (TYPES[type] ?? 'string');
}

const TYPES = { number: 'number', integer: 'number', boolean: 'boolean' } as Readonly<Record<string, string>>;

describe('tables', () => {
  const all = tablesOf({ project: projectWith(), documents: SAMPLE, of: SAMPLE, now: NOW });
  const byName = Object.fromEntries(all.map((each) => [each.name, each]));

  it('have rows in every table of the sample with a certificate', () => {
    expect(all.filter((each) => each.rows.length === 0).map((each) => each.name)).toEqual([]);
    expect(all.length).toBe(TABLES.length + 2);
  });

  it('are read back from CSV, by the declared types alone, as what the JSON holds', () => {
    const json = tablesJson(all);
    for (const table of all) expect(typed(table), table.name).toEqual(json[table.name]?.rows);
  });

  it('hold in every cell what the declaration says: its type, and nothing empty that never is', () => {
    const faults = all.flatMap(({ name, columns, rows }) =>
      Object.entries(columns).flatMap(([column, declared], index) =>
        rows.some((each) => !fits(each[index], declared)) ? [`${name}.${column}`] : [],
      ),
    );
    expect(faults).toEqual([]);
  });

  it('have a key that is never empty and never the same in two rows', () => {
    for (const { name, table, columns, rows } of all) {
      const at = table.key.map((column) => Object.keys(columns).indexOf(column));
      const keys = rows.map((each) => at.map((index) => each[index]));
      expect(keys.flat(), name).not.toContain(undefined);
      expect(new Set(keys.map((key) => JSON.stringify(key))).size, name).toBe(keys.length);
    }
  });

  it('refuse a row with a column that is not declared, and one without a value that is never empty', () => {
    const table = (rows: readonly { readonly hole: string }[]) =>
      defineTable({
        name: 't',
        about: 'a',
        key: ['hole'],
        columns: { hole: text('the hole') },
        rows: () => rows,
      });
    const source = { project: projectWith(), documents: [], of: [], now: NOW };
    expect(makeTable(table([{ hole: 'A' }]), source).rows).toEqual([['A']]);
    const more = [{ hole: 'A', depth: 1 }];
    expect(() => makeTable(table(more), source)).toThrow('no column depth');
    expect(() => makeTable(table([{ hole: undefined as never }]), source)).toThrow('never is');
  });

  it('do not compile with a row that lacks a column or has one of another type', () => {
    const given = { name: 't', about: 'a', key: ['hole'], columns: { hole: text('the hole') } } as const;
    // @ts-expect-error: the column is left out
    defineTable({ ...given, rows: () => [{}] });
    // @ts-expect-error: the column is a text
    defineTable({ ...given, rows: () => [{ hole: 1 }] });
    // @ts-expect-error: only a column that may be empty takes undefined
    defineTable({ ...given, rows: () => [{ hole: undefined }] });
    // @ts-expect-error: a key is one of the columns
    defineTable({ ...given, key: ['depth'], rows: () => [{ hole: 'A' }] });
    expect(given.key).toEqual(['hole']);
  });

  it('add up to what the documents hold: metres logged and drilled, bags, shots, gold', () => {
    const holes = SAMPLE.filter(({ kind }) => kind === 'hole');
    const count = (table: string) =>
      holes.reduce((sum, hole) => sum + Object.keys(hole.tables[table] ?? {}).length, 0);
    const mm = (table: string) =>
      holes
        .flatMap((hole) => Object.values(hole.tables[table] ?? {}))
        .reduce((sum, thing) => sum + Number(thing.toMm) - Number(thing.fromMm), 0);
    const metres = (table: string) =>
      readBack(tableCsv(byName[table]!)).reduce(
        (sum, each) => sum + Number(each.to_m) - Number(each.from_m),
        0,
      );
    expect(byName.geology?.rows.length).toBe(count('rows'));
    expect(metres('geology')).toBeCloseTo(mm('rows') / 1000, 6);
    expect(byName.samples?.rows.length).toBe(count('bags'));
    expect(byName.surveys_read?.rows.length).toBe(count('shots'));
    expect(byName.rods?.rows.length).toBe(count('rods'));
    expect(metres('recovery')).toBeCloseTo(150 + 24 + 90 + 54, 6);
    const gold = rowsIn(byName.results).filter((each) => each.status === 'counts');
    expect(gold.reduce((sum, each) => sum + Number(each.value ?? 0), 0)).toBeCloseTo(0.42 + 0.005 + 100, 9);
  });

  it('of some documents hold the rows of those alone, with dispatches and results from all', () => {
    const [hole] = SAMPLE as [Document];
    const some = made(projectWith(), SAMPLE, [hole]);
    expect(new Set(rowsIn(some.samples).map((each) => each.hole))).toEqual(new Set(['MBRC001']));
    expect(rowsIn(some.results).length).toBe(4);
    expect(rowsIn(some.samples)[0]?.dispatch).toBe('D2026-03-14-NOK');
    expect(rowsIn(some.shifts)).toEqual([]);
  });

  it('come with a page that names each column with its unit and what an empty cell means', () => {
    const [page] = csvFiles('Mulgara Bend', all);
    const words = new TextDecoder().decode(page?.bytes);
    for (const { table, columns } of all) {
      expect(words).toContain(`\n## ${table.name}\n`);
      for (const [name, { empty = 'never empty' }] of Object.entries(columns)) {
        const line = words.split('\n').find((each) => each.startsWith(`| \`${name}\` |`));
        expect(line, `${table.name}.${name}`).toBeDefined();
        expect(words.replaceAll('\\', ''), `${table.name}.${name}`).toContain(empty);
      }
    }
  });
});

describe('results in a table', () => {
  const hole = holeWith({
    bags: ['ZQ1', 'ZQ2', 'ZQ3', 'ZQ4'].map((number, index) => ({
      number,
      kind: 'primary',
      fromMm: index * 1000,
      toMm: index * 1000 + 1000,
    })),
    rods: [rod(1, 6)],
  });
  const own = { ownSamples: [{ is: 'repeat', at: 'end', text: 'R' }] };
  const project = projectWith(undefined, {});
  const withOwn = {
    ...project,
    sampling: { ...project.sampling, results: { ...project.sampling.results!, ...(own as object) } },
  };

  it('say of each reported value whether it counts, was issued again, is a second report or the laboratory’s own', () => {
    const documents = [
      hole,
      certificate('OLD', [['ZQ1', '9']]),
      certificate(
        'NEW',
        [
          ['ZQ1', '1.5'],
          ['ZQ2', '<0.02'],
          ['ZQ2', '0.3'],
          ['ZQ1R', '1.4'],
          ['ZQ4', 'lost'],
          ['XX9', '2'],
        ],
        { supersedes: 'OLD' },
      ),
    ];
    const rows = rowsIn(made(withOwn, documents).results);
    expect(
      rows.map(({ sample, status, state, value, hole: of }) => [sample, status, state, value, of]),
    ).toEqual([
      ['ZQ1', 'superseded', 'measured', 9, 'MBRC900'],
      ['ZQ1', 'counts', 'measured', 1.5, 'MBRC900'],
      ['ZQ2', 'counts', 'below detection', 0.01, 'MBRC900'],
      ['ZQ2', 'second report', 'measured', 0.3, 'MBRC900'],
      ['ZQ1R', 'laboratory repeat', 'measured', 1.4, undefined],
      ['ZQ4', 'not readable', 'not reported', undefined, 'MBRC900'],
      ['XX9', 'counts', 'measured', 2, undefined],
    ]);
    expect(rows.find((each) => each.status === 'laboratory repeat')?.repeats).toBe('ZQ1');
    expect(rows.map((each) => each.reported)).toEqual(['9', '1.5', '<0.02', '0.3', '1.4', 'lost', '2']);
  });

  it('by interval carry the value as it counts, its state and its limit, the unit in the name', () => {
    const rows = rowsIn(
      made(project, [
        hole,
        certificate('A', [
          ['ZQ2', '<0.02'],
          ['ZQ1', '1.5'],
        ]),
      ]).assays,
    );
    expect(rows).toEqual([
      {
        hole: 'MBRC900',
        from_m: 0,
        to_m: 1,
        sample: 'ZQ1',
        rank: 'metre',
        best: true,
        Au_ppm: 1.5,
        Au_state: 'measured',
      },
      {
        hole: 'MBRC900',
        from_m: 1,
        to_m: 2,
        sample: 'ZQ2',
        rank: 'metre',
        best: true,
        Au_ppm: 0.01,
        Au_state: 'below detection',
        Au_limit: 0.02,
      },
    ]);
  });
});

interface LongRow {
  readonly state: string;
  readonly kind?: string;
  readonly code: string;
  readonly level: number;
  readonly percent?: number;
  readonly number: number;
  readonly text: string;
  readonly at_m?: number;
  readonly qualities?: string;
}

/** The cell that rows of the long form are made of, with what more was said of its codes. */
function cellOf(parts: readonly LongRow[]): unknown {
  const qualified = parts.flatMap(({ code, qualities }) =>
    qualities === undefined
      ? []
      : [[code, Object.fromEntries(qualities.split('; ').map((each) => each.split(/ (.*)/)))] as const],
  );
  const plain = plainCellOf(parts);
  return qualified.length === 0 ? plain : { ...(plain as object), qualified: Object.fromEntries(qualified) };
}

function plainCellOf(parts: readonly LongRow[]): unknown {
  const [first, second, third] = parts as readonly [LongRow, LongRow?, LongRow?];
  const share = (part: LongRow) => ({ code: part.code, percent: part.percent });
  const amount = (part: LongRow) => part.percent ?? 'trace';
  if (first.kind === undefined) return { absent: first.state };
  if (first.kind === 'code')
    return {
      code: first.code,
      ...(second && { second: share(second) }),
      ...(third && { third: share(third) }),
    };
  if (first.kind === 'events')
    return {
      events: Object.fromEntries(
        parts.map(({ code, at_m, number }) => [
          code,
          {
            ...(at_m === undefined ? {} : { atMm: Math.round(at_m * 1000) }),
            ...(number === undefined ? {} : { number }),
          },
        ]),
      ),
    };
  if (first.kind === 'codes') return { codes: Object.fromEntries(parts.map(({ code }) => [code, true])) };
  if (first.kind === 'levels')
    return { levels: Object.fromEntries(parts.map(({ code, level }) => [code, level])) };
  if (first.kind === 'percents')
    return { percents: Object.fromEntries(parts.map((part) => [part.code, amount(part)])) };
  if (first.kind === 'percent') return { percent: amount(first) };
  if (first.kind === 'flag') return { flag: true };
  return { [first.kind]: first[first.kind as 'level' | 'number' | 'text'] };
}

describe('geology in a table', () => {
  it('keeps none, not observed and not asked apart, and a trace from a number', () => {
    const cells = {
      rock: { code: 'BAS', second: { code: 'SHA', percent: 30 } },
      sulphides: { percents: { PYR: 3, CPY: 'trace' } },
      alteration: { absent: 'none' },
      veins: { percent: 'trace' },
      fizz: { absent: 'not observed' },
    };
    const tables = made(projectWith(), [holeWith({ rows: [row(0, 1, { cells })] })]);
    expect(rowsIn(tables.geology)[0]).toMatchObject({
      rock: 'BAS',
      rock_second: 'SHA',
      rock_second_percent: 30,
      sulphides: 'PYR 3; CPY trace',
      alteration: 'none',
      fields_none: 'alteration',
      fields_not_observed: 'fizz',
      fields_trace: 'veins',
    });
    expect(rowsIn(tables.geology)[0]).not.toHaveProperty('veins');
    expect(
      rowsIn(tables.geology_long).map(({ field, part, state, code, percent, trace, counts_as_percent }) => [
        field,
        part,
        state,
        code,
        percent,
        trace,
        counts_as_percent,
      ]),
    ).toEqual([
      ['rock', 1, 'value', 'BAS', undefined, false, 70],
      ['rock', 2, 'value', 'SHA', 30, false, 30],
      ['sulphides', 1, 'value', 'PYR', 3, false, 3],
      ['sulphides', 2, 'value', 'CPY', undefined, true, 0.1],
      ['alteration', 1, 'none', undefined, undefined, false, undefined],
      ['veins', 1, 'value', undefined, undefined, true, 0.1],
      ['fizz', 1, 'not observed', undefined, undefined, false, undefined],
    ]);
  });

  it('has a column for a field that the schema lost and rows still hold, and says where a value is of another kind', () => {
    const hole = holeWith({
      rows: [row(0, 1, { cells: { rock: { code: 'BAS' }, sparkle: { level: 2 }, veins: { text: 'many' } } })],
    });
    const legend = { sparkle: { label: 'sparkle', kind: 'level', scale: 'amount' } };
    const document = { ...hole, tables: { ...hole.tables, legendFields: legend } };
    const [logged] = rowsIn(made(projectWith(), [document]).geology);
    expect(logged).toMatchObject({ sparkle: 2, fields_other_kind: 'veins' });
    expect(rowsIn(made(projectWith(), [document]).fields).at(-1)).toMatchObject({
      field: 'sparkle',
      in_schema: false,
    });
  });

  it('gives every cell back, from the wide form and from the long one, whatever the schema and the rows', () => {
    fc.assert(
      fc.property(schemaWithRows(4), ({ schema, rows }) => {
        const hole = holeWith({
          rows: rows.map(
            (said, index) => ({ ...said, fromMm: index * 1000, toMm: index * 1000 + 1000 }) as never,
          ),
        });
        const tables = made(projectWith(schema), [hole]);
        const wide = typed(tables.geology!) as readonly Record<string, unknown>[];
        rows.forEach(({ cells }, index) => {
          const line = wide[index]!;
          for (const [field, cell] of Object.entries(cells)) {
            const named = (list: string) =>
              String(line[list] ?? '')
                .split(' ')
                .includes(field);
            expect(named('fields_none')).toBe('absent' in cell && cell.absent === 'none');
            expect(named('fields_not_observed')).toBe('absent' in cell && cell.absent === 'not observed');
            if ('code' in cell) expect(line[field]).toBe(cell.code);
            if ('codes' in cell) expect(line[field]).toBe(Object.keys(cell.codes).join('; '));
            for (const [code, qualities] of Object.entries(qualifiedIn(cell)))
              for (const [list, quality] of Object.entries(qualities))
                expect(String(line[`${field}_qualities`]).split('; ')).toContain(
                  `${code} ${list} ${quality}`,
                );
            if ('code' in cell) expect(line[`${field}_third`] ?? undefined).toBe(cell.third?.code);
            if ('level' in cell) expect(line[field]).toBe(cell.level);
            if ('number' in cell) expect(line[field]).toBe(cell.number);
            if ('text' in cell) expect(line[field]).toBe(cell.text);
            if ('percent' in cell && cell.percent !== 'trace') expect(line[field]).toBe(cell.percent);
          }
        });
        rows.forEach(({ cells }, index) => {
          const long = rowsIn(tables.geology_long).filter((each) => each.from_m === index);
          for (const [field, cell] of Object.entries(cells))
            expect(cellOf(long.filter((each) => each.field === field) as never)).toEqual(cell);
          expect(new Set(long.map((each) => each.field))).toEqual(new Set(Object.keys(cells)));
        });
      }),
      { numRuns: runs(1000) },
    );
  });
});

describe('a text that a spreadsheet would run', () => {
  it('is inert in every table, and one apostrophe less gives it back', () => {
    for (const remark of [...HOSTILE, "'=1+1", "''@x", '-2 to -3 m'].filter((each) => each.trim() !== '')) {
      const hole = holeWith({ rows: [row(0, 1, { remark })] }, { stateReason: remark });
      const tables = made(projectWith(), [hole]);
      const run = ['collars', 'geology', 'geology_long', 'columns']
        .flatMap((name) => (parse(tableCsv(tables[name]!)) as string[][]).flat())
        .filter((cell) => RUN_BY_A_SPREADSHEET.test(cell));
      expect(run).toEqual([]);
      const [back] = typed(tables.geology!) as readonly Record<string, unknown>[];
      expect(back?.remark).toBe(new TextDecoder().decode(new TextEncoder().encode(remark)));
    }
  });
});
