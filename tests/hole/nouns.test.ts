import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import {
  HOLE_NOUNS,
  headerOf,
  holeNouns,
  holeThing,
  holeThings,
  planOf,
  rowsDown,
} from '../../src/hole/hole.ts';
import { emptyDocument } from '../../src/record/document.ts';
import { nameOf } from '../../src/sampling/rod/unmended.ts';

const AT = '2026-03-14T07:42:10+08:00';
const ROW = { fromMm: 46_000, toMm: 47_000, cells: { rock: { code: 'BST' }, pyrite: { percent: 'trace' } } };

/** One good thing of each table that a test below spoils. */
const GOOD = {
  hole: {
    name: 'ZQRC004',
    state: 'drilling',
    logFromMm: 0,
    intervalMm: 1000,
    rodMm: 6000,
    firstRodOffsetMm: -300,
  },
  plan: { azimuthDeg: 90, azimuthNorth: 'grid', dipDeg: -60, depthMm: 120_000 },
  rods: { at: AT, rod: 8, depthMm: 47_700 },
  rows: ROW,
  bags: { number: 'ZQ000163', kind: 'primary', fromMm: 46_000, toMm: 47_000 },
  shots: { run: 'k1-3', depthMm: 30_000, dipDeg: -59.5, at: AT, by: 'Ada' },
  stops: { because: 'lightning', at: AT, by: 'driller' },
} as const;

const holds = (table: keyof typeof HOLE_NOUNS, thing: unknown): boolean =>
  HOLE_NOUNS[table].safeParse(thing).success;

describe('a noun of a hole', () => {
  test.each(Object.entries(GOOD))('of table %s is taken as it is, nothing added or turned', (table, good) => {
    expect(HOLE_NOUNS[table as keyof typeof GOOD].parse(good)).toEqual(good);
  });

  test.each(Object.keys(GOOD) as (keyof typeof GOOD)[])(
    'of table %s with a member no one knows is refused',
    (table) => {
      expect(holds(table, { ...GOOD[table], surprise: 1 })).toBe(false);
    },
  );

  test.each<[keyof typeof GOOD, Record<string, unknown>, string]>([
    ['rods', { depthMm: 47_700.5 }, 'a depth in parts of a millimetre'],
    ['rods', { depthMm: -1 }, 'a depth above the collar'],
    ['rods', { depthMm: 5_000_001 }, 'a depth no hole reaches'],
    ['rods', { depthMm: '47700' }, 'a depth written as text'],
    ['rods', { at: '2026-02-30T00:00:00+08:00' }, 'a day that is not in the calendar'],
    ['rods', { at: '2026-03-14T07:42:10Z' }, 'an instant without its offset'],
    ['plan', { azimuthDeg: 360 }, 'an azimuth of 360'],
    ['plan', { dipDeg: 91 }, 'a dip beyond vertical'],
    ['plan', { azimuthNorth: 'local' }, 'a north that is none'],
    ['hole', { state: 'done' }, 'a state that the trade does not know'],
    ['hole', { name: '' }, 'an empty name'],
    ['bags', { kind: 'twin' }, 'a kind of sample that is none'],
    ['rows', { noReturn: false }, 'a flag that says no'],
    ['rows', { cells: { rock: { code: 'BST', level: 2 } } }, 'a cell of two kinds'],
    ['rows', { cells: { alteration: { levels: {} } } }, 'levels that name no code'],
    ['rows', { cells: { pyrite: { percent: 101 } } }, 'more than all of it'],
    ['rows', { cells: { pyrite: { absent: 'unknown' } } }, 'an absence that is neither'],
  ])('of table %s is refused with %j: %s', (table, spoilt) => {
    expect(holds(table, GOOD[table])).toBe(true);
    expect(holds(table, { ...GOOD[table], ...spoilt })).toBe(false);
  });
});

describe('the JSON Schema of the nouns', () => {
  test('is written for every table, and an independent validator takes and refuses the same', () => {
    for (const [table, noun] of Object.entries(HOLE_NOUNS)) {
      const validate = new Ajv2020({ strict: false }).compile(z.toJSONSchema(noun));
      if (!Object.hasOwn(GOOD, table)) continue;
      const good = GOOD[table as keyof typeof GOOD];
      expect(validate(good)).toBe(true);
      expect(validate({ ...good, surprise: 1 })).toBe(false);
    }
  });

  test('says in the description what it cannot say itself of a stamp', () => {
    expect(JSON.stringify(z.toJSONSchema(HOLE_NOUNS.stops))).toContain('a real date and time');
  });
});

describe('reading a hole', () => {
  const hole = {
    ...emptyDocument({ kind: 'hole', id: 'ZQRC004' }),
    tables: {
      hole: { hole: GOOD.hole },
      rows: { 'k1-2': ROW, 'k1-1': { ...ROW, fromMm: 45_000, toMm: 46_000 } },
    },
  };

  test('gives rows from the top down, however they were made', () => {
    expect(rowsDown(hole).map(([id]) => id)).toEqual(['k1-1', 'k1-2']);
  });

  test('gives nothing for what is not there', () => {
    expect(holeNouns(hole, 'bags')).toEqual([]);
    expect(holeThing(hole, 'rows', 'k1-9')).toBeUndefined();
    expect(planOf(hole)).toBeUndefined();
  });

  test('without a header is an error of whoever let it in', () => {
    expect(headerOf(hole).name).toBe('ZQRC004');
    expect(() => headerOf(emptyDocument({ kind: 'hole', id: 'ZQRC009' }))).toThrow(
      'hole ZQRC009 has no header',
    );
  });
});

describe('a bag that an older file calls void', () => {
  const stored = {
    ...emptyDocument({ kind: 'hole', id: 'ZQRC004' }),
    tables: { bags: { 'k1-1': GOOD.bags, 'k1-2': { number: 'ZQ000164', kind: 'void', reason: 'torn' } } },
  };

  test('is taken from the file, and read as spoiled wherever bags are read', () => {
    expect(holds('bags', stored.tables.bags['k1-2'])).toBe(true);
    expect(holeNouns(stored, 'bags').map((bag) => bag.kind)).toEqual(['primary', 'spoiled']);
    expect(holeThings(stored, 'bags').map(([id, bag]) => [id, bag.kind])).toEqual([
      ['k1-1', 'primary'],
      ['k1-2', 'spoiled'],
    ]);
    expect(holeThing(stored, 'bags', 'k1-2')).toEqual({
      number: 'ZQ000164',
      kind: 'spoiled',
      reason: 'torn',
    });
  });

  test('stays in the file as it was written: history is never rewritten', () => {
    holeNouns(stored, 'bags');
    expect(stored.tables.bags['k1-2'].kind).toBe('void');
  });

  test('keeps the name of its mismatch', () => {
    expect(nameOf({ mismatch: 'void-used' })).toBe('a spoiled number');
  });
});
