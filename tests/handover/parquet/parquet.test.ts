import { tableFromIPC } from 'apache-arrow';
import fc from 'fast-check';
import { readParquet, readSchema } from 'parquet-wasm/node';
import { describe, expect, it } from 'vitest';
import { parquetFile } from '../../../src/handover/parquet/parquet-file.ts';
import { parquetFiles } from '../../../src/handover/parquet/partitions.ts';
import {
  date,
  instant,
  integer,
  number,
  optional,
  text,
  yesNo,
} from '../../../src/handover/tables/column.ts';
import type { MadeTable } from '../../../src/handover/tables/table.ts';
import { tablesOf } from '../../../src/handover/tables/tables.ts';
import { instantMs, offsetMin, type Stamp, stamp } from '../../../src/quantity/stamp.ts';
import { runs } from '../../support/long-run.ts';
import { certificate, NOW, projectWith, sampleDocument } from '../tables/support.ts';

/** What a reader makes of a file that shares nothing with the writer: arrow-rs, compiled for JavaScript. */
function read(bytes: Uint8Array): readonly Readonly<Record<string, unknown>>[] {
  const table = tableFromIPC(readParquet(bytes).intoIPCStream());
  return table.toArray().map((row) => row?.toJSON() ?? {});
}

/** A row as the contract says that it is in Parquet. */
function expectedRow(
  { columns }: MadeTable,
  row: MadeTable['rows'][number],
): Readonly<Record<string, unknown>> {
  return Object.fromEntries(
    Object.entries(columns).flatMap(([name, { type }], index): readonly (readonly [string, unknown])[] => {
      const value = row[index];
      if (type !== 'instant')
        return [[name, type === 'date' && value !== undefined ? Date.parse(String(value)) : (value ?? null)]];
      const at = value as Stamp | undefined;
      return [
        [name, at === undefined ? null : instantMs(at)],
        [`${name}_offset_min`, at === undefined ? null : offsetMin(at)],
      ];
    }),
  );
}

const plain = (rows: readonly Readonly<Record<string, unknown>>[]) =>
  rows.map((row) =>
    Object.fromEntries(
      Object.entries(row).map(([name, value]) => [
        name,
        value instanceof Date ? value.getTime() : typeof value === 'bigint' ? Number(value) : value,
      ]),
    ),
  );

const COLUMNS = {
  words: text('words'),
  more: optional(text('more'), 'none'),
  metres: optional(number('metres', 'm'), 'none'),
  count: optional(integer('count'), 'none'),
  so: optional(yesNo('so'), 'unknown'),
  day: optional(date('day'), 'none'),
  at: optional(instant('at'), 'none'),
};

function madeOf(rows: MadeTable['rows']): MadeTable {
  const table = { name: 't', about: 'made up', key: ['words'], columns: COLUMNS, rows: () => [] };
  return { name: 't', table, columns: COLUMNS, rows };
}

const values = fc.tuple(
  fc.string({ unit: 'grapheme' }),
  fc.option(fc.string({ unit: 'grapheme', maxLength: 300 }), { nil: undefined }),
  fc.option(fc.double({ noNaN: true, noDefaultInfinity: true }), { nil: undefined }),
  fc.option(fc.integer(), { nil: undefined }),
  fc.option(fc.boolean(), { nil: undefined }),
  fc
    .option(fc.date({ min: new Date('1990-01-01'), max: new Date('2090-01-01'), noInvalidDate: true }), {
      nil: undefined,
    })
    .map((day) => day?.toISOString().slice(0, 10)),
  fc
    .option(fc.tuple(fc.integer({ min: 0, max: 4e12 }), fc.integer({ min: -14 * 4, max: 14 * 4 })), {
      nil: undefined,
    })
    .map((at) => at && stamp(at[0], at[1] * 15)),
);

describe('a Parquet file', () => {
  it('is read by another reader as what was written, types and empty cells too, whatever the rows', () => {
    fc.assert(
      fc.property(fc.array(values, { minLength: 1, maxLength: 50 }), (rows) => {
        const made = madeOf(rows);
        expect(plain(read(parquetFile(made)))).toEqual(rows.map((row) => expectedRow(made, row)));
      }),
      { numRuns: runs(1000) },
    );
  });

  it('has its rows in groups, so that a reader of a few takes no more than it needs', () => {
    const rows = Array.from(
      { length: 45_000 },
      (_, index) => [`row ${index}`, undefined, index / 8, index, undefined, undefined, undefined] as const,
    );
    const bytes = parquetFile(madeOf(rows));
    const few = tableFromIPC(readParquet(bytes, { rowGroups: [1] }).intoIPCStream());
    expect(few.numRows).toBe(20_000);
    expect(few.get(0)?.toJSON().words).toBe('row 20000');
    expect(tableFromIPC(readParquet(bytes).intoIPCStream()).numRows).toBe(45_000);
  });

  it('says in its types which column is never empty, and is the same bytes for the same rows', () => {
    const made = madeOf([['a', undefined, 1, 2, true, '2026-03-14', NOW]]);
    const { fields } = tableFromIPC(readSchema(parquetFile(made)).intoIPCStream()).schema;
    expect(fields.map(({ name, nullable, type }) => [name, nullable, String(type)])).toEqual([
      ['words', false, 'Utf8'],
      ['more', true, 'Utf8'],
      ['metres', true, 'Float64'],
      ['count', true, 'Int32'],
      ['so', true, 'Bool'],
      ['day', true, 'Date32<DAY>'],
      ['at', true, 'Timestamp<MILLISECOND, UTC>'],
      ['at_offset_min', true, 'Int32'],
    ]);
    expect(Buffer.from(parquetFile(made)).equals(parquetFile(made))).toBe(true);
  });
});

describe('the tables as Parquet', () => {
  const documents = [
    ...['MBRC001', 'MBRC002', 'MBRC003'].map((id) => sampleDocument('holes', id)),
    sampleDocument('shifts', 'RC7_2026-03-12_DAY'),
    certificate('WA1', [
      ['MB000121', '0.42'],
      ['MB000122', '<0.01'],
    ]),
  ];
  const tables = tablesOf({ project: projectWith(), documents, of: documents, now: NOW });
  const files = [...parquetFiles('Mulgara Bend / 2', tables)];

  it('stand in partitions by project and hole, with names that every disk takes', () => {
    const geology = files.map((each) => each.file).filter((file) => file.startsWith('parquet/geology/'));
    expect(geology).toEqual(
      ['MBRC001', 'MBRC002', 'MBRC003'].map(
        (hole) => `parquet/geology/project=Mulgara Bend %2F 2/hole=${hole}/part-0.parquet`,
      ),
    );
    expect(files.map((each) => each.file)).toContain(
      'parquet/shifts/project=Mulgara Bend %2F 2/part-0.parquet',
    );
  });

  it('hold over all partitions the rows of every table, value by value', () => {
    for (const table of tables) {
      const found = files
        .filter(({ file }) => file.startsWith(`parquet/${table.name}/`))
        .flatMap(({ bytes }) => plain(read(bytes)));
      expect(found, table.name).toEqual(table.rows.map((row) => expectedRow(table, row)));
    }
  });
});
