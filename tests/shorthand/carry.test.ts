import { describe, expect, test } from 'vitest';
import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { carriedCell } from '../../src/shorthand/carry.ts';
import { type Cell, NONE, NOT_OBSERVED } from '../../src/value/cell.ts';
import { above, rowOf, schema } from './fixture-schema.ts';

function carried(name: string, cell: Cell, of: LoggingSchema = schema): Cell | undefined {
  const field = of.fields.find((each) => each.name === name);
  if (field === undefined) throw new Error(name);
  return carriedCell(of, field, { cells: { [name]: cell } }, {});
}

describe('what is unsaid', () => {
  test('carries from the last observed row above by its field, and the row says which fields did', () => {
    expect(rowOf('p3', { above }).row).toMatchObject({
      cells: { ...above.cells, sulphides: { percents: { pyr: 3 } } },
      carried: ['rock', 'weathering', 'alteration', 'veins'],
    });
  });

  test('carries across a contact too', () => {
    expect(rowOf('do', { above }).row.cells).toEqual({ ...above.cells, rock: { code: 'DOL' } });
  });

  test('carries over a metre without return from the row above that', () => {
    expect(rowOf('.', { above, previous: rowOf('nr').row }).row.cells).toEqual(above.cells);
  });

  test('carries an absence as it was', () => {
    expect(carried('alteration', NONE)).toEqual(NONE);
    expect(carried('alteration', NOT_OBSERVED)).toEqual(NOT_OBSERVED);
  });

  test('never carries what the schema does not: flags of a contact, readings, notes', () => {
    expect(carried('contact', { flag: true })).toBeUndefined();
    expect(carried('magsus', { number: 12 })).toBeUndefined();
    expect(rowOf('p3', { above: rowOf("ct magsus'12 note'wet", { above }).row }).row.cells).toMatchObject({
      contact: NONE,
      magsus: NOT_OBSERVED,
      note: NOT_OBSERVED,
    });
  });

  test('never carries a remark', () => {
    expect(rowOf('p3', { above: { ...above, remark: 'wet' } }).row).not.toHaveProperty('remark');
  });
});

describe('what can no longer be logged does not carry', () => {
  test('a retired code, and it alone of several', () => {
    const code = { code: 'OLD' };
    expect(carried('rock', code)).toBeUndefined();
    expect(carried('rock', { code: 'BST', second: { ...code, percent: 20 } })).toEqual({ code: 'BST' });
    expect(carried('alteration', { levels: { chl: 2, gone: 1 } })).toEqual({ levels: { chl: 2 } });
  });

  test('codes that are all gone: nothing carries, so that none seen is never made up', () => {
    expect(carried('alteration', { levels: { gone: 1 } })).toBeUndefined();
    expect(carried('sulphides', { percents: { gone: 1 } })).toBeUndefined();
  });

  test('a level that the scale no longer has, a kind that the field no longer is, none where it is always something', () => {
    expect(carried('weathering', { level: 6 })).toBeUndefined();
    expect(carried('alteration', { levels: { chl: 5 } })).toBeUndefined();
    expect(carried('veins', { level: 2 })).toBeUndefined();
    expect(carried('rock', NONE)).toBeUndefined();
  });
});
