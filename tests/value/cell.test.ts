import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { absenceOf, type Cell, kindOf, NONE, NOT_OBSERVED, sameCell } from '../../src/value/cell.ts';
import { type RowSaid, sameObservation } from '../../src/value/row.ts';

const EXAMPLES: readonly Cell[] = [
  { code: 'BST' },
  { level: 2 },
  { levels: { chl: 2 } },
  { percents: { pyr: 'trace' } },
  { percent: 5 },
  { number: -3.5 },
  { flag: true },
  { text: 'as said' },
];

describe('a cell', () => {
  test('holds a value of one kind or an absence', () => {
    expect(EXAMPLES.map(kindOf)).toEqual([
      'code',
      'level',
      'levels',
      'percents',
      'percent',
      'number',
      'flag',
      'text',
    ]);
    expect(EXAMPLES.map(absenceOf)).toEqual(EXAMPLES.map(() => undefined));
    expect([NONE, NOT_OBSERVED].map(kindOf)).toEqual([undefined, undefined]);
    expect([NONE, NOT_OBSERVED].map(absenceOf)).toEqual(['none', 'not observed']);
  });

  test('is the same only as itself among different ones', () => {
    const all = [...EXAMPLES, NONE, NOT_OBSERVED, undefined];
    for (const [i, a] of all.entries())
      for (const [j, b] of all.entries()) expect(sameCell(a, b)).toBe(i === j);
  });

  test('is the same whatever the order in which codes were named', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string({ minLength: 1 }), fc.integer({ min: 1, max: 5 })), (levels) => {
        const turned = Object.fromEntries(Object.entries(levels).reverse());
        expect(sameCell({ levels }, { levels: turned })).toBe(true);
      }),
    );
  });

  test('with codes that look like several is not taken for several', () => {
    expect(sameCell({ levels: { 'a:1,b': 2 } }, { levels: { a: 1, b: 2 } })).toBe(false);
  });

  test('tells a trace from any number, and none from not observed', () => {
    expect(sameCell({ percent: 'trace' }, { percent: 0 })).toBe(false);
    expect(sameCell(NONE, NOT_OBSERVED)).toBe(false);
  });

  test('with a second rock is another than without, or with another share', () => {
    const second = (percent: number): Cell => ({ code: 'BST', second: { code: 'SHL', percent } });
    expect(sameCell(second(30), second(30))).toBe(true);
    expect(sameCell(second(30), second(20))).toBe(false);
    expect(sameCell(second(30), { code: 'BST' })).toBe(false);
  });
});

describe('two rows', () => {
  const row: RowSaid = { cells: { rock: { code: 'BST' }, vein: NONE } };

  test('observe the same whatever was carried, repeated, asked or remarked', () => {
    const typed: RowSaid = { ...row, carried: ['rock'], repeat: true, asked: ['jump'], remark: 'wet' };
    expect(sameObservation(row, typed)).toBe(true);
  });

  test('observe otherwise where a cell differs, is missing, or nothing came up', () => {
    expect(sameObservation(row, { cells: { ...row.cells, vein: NOT_OBSERVED } })).toBe(false);
    expect(sameObservation(row, { cells: { rock: { code: 'BST' } } })).toBe(false);
    expect(sameObservation({ cells: { rock: { code: 'BST' } } }, row)).toBe(false);
    expect(sameObservation(row, { ...row, noReturn: true })).toBe(false);
  });
});
