import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { databaseFile } from '../../src/handover/sqlite/database.ts';
import { record, type SqlValue, varint } from '../../src/handover/sqlite/record.ts';
import { runs } from '../support/long-run.ts';
import { asking } from './support/engine.ts';

const HEAD = { applicationId: 7, userVersion: 9 };
const SOUND = [{ integrity_check: 'ok' }];

/** A value as the engine gives it back. */
function plain(value: SqlValue): unknown {
  if (value === null || typeof value === 'string') return value;
  if (value instanceof Uint8Array) return [...value];
  return 'integer' in value ? value.integer : value.real;
}

const rowsIn = (all: (sql: string) => readonly Readonly<Record<string, unknown>>[], table: string) =>
  all(`select rowid, * from ${table}`).map((row) =>
    Object.values(row).map((value) => (value instanceof Uint8Array ? [...value] : value)),
  );

/** Texts of every length that matters: on the page, just past it, over several overflow pages. */
const texts = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 30 }).filter((text) => !text.includes('\0')),
  fc.integer({ min: 0, max: 14_000 }).map((length) => 'x'.repeat(length)),
  fc.constantFrom(0, 4050, 4055, 4056, 4057, 4061, 4062, 8150).map((length) => 'y'.repeat(length)),
);
const values: fc.Arbitrary<SqlValue> = fc.oneof(
  fc.constant(null),
  texts,
  fc.maxSafeInteger().map((integer) => ({ integer })),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((real) => ({ real })),
  fc.uint8Array({ maxLength: 5000 }),
);

describe('a database file', () => {
  it('is read by SQLite as what was written, and found sound, whatever the rows', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(values, values), { maxLength: 60 }), (rows) => {
        const file = databaseFile(HEAD, [{ name: 't', sql: 'CREATE TABLE t (a, b)', rows }]);
        asking(file, (all) => {
          expect(all('pragma integrity_check')).toEqual(SOUND);
          expect(rowsIn(all, 't')).toEqual(rows.map((row, index) => [index + 1, ...row.map(plain)]));
        });
      }),
      { numRuns: runs(1000) },
    );
  });

  it('grows to trees of several levels, each row found by its number', () => {
    const rows = Array.from({ length: 40_000 }, (_, index) => [`row ${index}`, { integer: index * index }]);
    const file = databaseFile(HEAD, [{ name: 't', sql: 'CREATE TABLE t (a, b)', rows }]);
    asking(file, (all) => {
      expect(all('pragma integrity_check')).toEqual(SOUND);
      expect(all('select count(*) as n, sum(b) as s from t')).toEqual([
        {
          n: 40_000,
          s: rows.reduce((sum, [, value]) => sum + Number((value as { integer: number }).integer), 0),
        },
      ]);
      for (const at of [1, 2, 299, 300, 20_011, 40_000])
        expect(all(`select a from t where rowid = ${at}`)).toEqual([{ a: `row ${at - 1}` }]);
    });
  }, 30_000);

  it('is sound whatever the number of pages: also where the last of a level would stand alone', () => {
    const long = 'z'.repeat(3000);
    for (const count of Array.from({ length: 24 }, (_, index) => 512 + index)) {
      const rows = Array.from({ length: count }, () => [long]);
      asking(databaseFile(HEAD, [{ name: 't', sql: 'CREATE TABLE t (a)', rows }]), (all) => {
        expect(all('pragma integrity_check'), `${count} rows`).toEqual(SOUND);
        expect(all('select count(*) as n from t')).toEqual([{ n: count }]);
      });
    }
  });

  it('holds a schema that is longer than its first page', () => {
    const tables = Array.from({ length: 60 }, (_, index) => ({
      name: `t${index}`,
      sql: `CREATE TABLE t${index} (${Array.from({ length: 60 }, (_, column) => `a_column_of_some_length_${column}`).join(', ')})`,
      rows: [Array.from({ length: 60 }, (_, column): SqlValue => ({ integer: column + index }))],
    }));
    asking(databaseFile(HEAD, tables), (all) => {
      expect(all('pragma integrity_check')).toEqual(SOUND);
      expect(all('select count(*) as n from sqlite_schema')).toEqual([{ n: 60 }]);
      expect(all('select a_column_of_some_length_59 as v from t59')).toEqual([{ v: 118 }]);
    });
  });

  it('finds rows by the keys that their definition declares, and by a row number below nought', () => {
    const file = databaseFile(HEAD, [
      {
        name: 't',
        sql: 'CREATE TABLE t (name TEXT NOT NULL PRIMARY KEY, id INTEGER, more TEXT, UNIQUE (more, name))',
        rows: ['pear', 'Apple', 'fig', 'apple'].map((name) => [name, { integer: name.length }, 'same']),
        keys: [[0], [2, 0]],
      },
      {
        name: 'u',
        sql: 'CREATE TABLE u (id INTEGER PRIMARY KEY, word TEXT)',
        rows: [
          [null, 'below'],
          [null, 'nought'],
          [null, 'above'],
        ],
        rowids: [-1, 0, 4326],
      },
    ]);
    asking(file, (all) => {
      expect(all('pragma integrity_check')).toEqual(SOUND);
      expect(all('explain query plan select id from t where name = 3')[0]?.detail).toContain(
        'sqlite_autoindex_t_1',
      );
      expect(all("select id from t where name = 'fig'")).toEqual([{ id: 3 }]);
      expect(all("select name from t where more = 'same' order by name").map((each) => each.name)).toEqual([
        'Apple',
        'apple',
        'fig',
        'pear',
      ]);
      expect(all('select word from u where id = -1')).toEqual([{ word: 'below' }]);
      expect(all('select id from u').map((each) => each.id)).toEqual([-1, 0, 4326]);
    });
  });

  it('says what program it is for, and is the same bytes for the same tables', () => {
    const made = () => databaseFile(HEAD, [{ name: 't', sql: 'CREATE TABLE t (a)', rows: [['x']] }]);
    expect(Buffer.from(made()).equals(made())).toBe(true);
    asking(made(), (all) => {
      expect(all('pragma application_id')).toEqual([{ application_id: 7 }]);
      expect(all('pragma user_version')).toEqual([{ user_version: 9 }]);
    });
  });
});

describe('numbers of a record', () => {
  it('take as many bytes as the format says', () => {
    expect([0, 127, 128, 16_383, 16_384, 2 ** 40].map((each) => varint(each).length)).toEqual([
      1, 1, 2, 2, 3, 6,
    ]);
    expect(varint(-1)).toEqual(Array(9).fill(255));
    expect(record(Array(130).fill(null)).length).toBe(132);
  });
});
