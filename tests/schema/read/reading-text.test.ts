import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LoggingSchema, NumberField } from '../../../src/schema/logging-schema.ts';
import { isBelowDetection, readReading } from '../../../src/schema/read/reading-text.ts';

const field: NumberField = {
  name: 'magsus',
  label: 'susceptibility',
  kind: 'number',
  unit: '1e-3 SI',
  min: -1,
  max: 100,
  decimals: 2,
  column: true,
  required: false,
  carry: false,
  unsaid: 'not observed',
  canBeNone: false,
};
const schema: LoggingSchema = { name: 'one', fields: [field], lists: {}, scales: {}, repeatsBeforeLook: 8 };
const read = (text: string, of: NumberField = field) => readReading(schema, of, text);
const why = (text: string, of: NumberField = field): string => {
  const result = read(text, of);
  return result.ok ? '' : `${result.problem}. ${result.remedy}`;
};

describe('a reading as it is typed', () => {
  it('is a number with a point, in the range and decimals of its field', () => {
    expect(read('0.42')).toEqual({ ok: true, cell: { number: 0.42 } });
    expect(read(' .5 ')).toEqual({ ok: true, cell: { number: 0.5 } });
    expect(read('-0')).toEqual({ ok: true, cell: { number: 0 } });
    expect(read('+3.')).toEqual({ ok: true, cell: { number: 3 } });
    fc.assert(
      fc.property(fc.integer({ min: -100, max: 10_000 }), (hundredths) => {
        expect(read((hundredths / 100).toFixed(2))).toEqual({
          ok: true,
          cell: { number: hundredths / 100 + 0 },
        });
      }),
    );
  });

  it('is nr where it was not read, and none where there is none and can be none', () => {
    expect(read('nr')).toEqual({ ok: true, cell: { absent: 'not observed' } });
    expect(read('none', { ...field, canBeNone: true })).toEqual({ ok: true, cell: { absent: 'none' } });
    expect(why('none')).toContain('always is something');
  });

  it('is refused with what to type', () => {
    expect(why('0,4')).toBe(
      '0,4 is not a number. Type a number with a point, like 0.42, or nr for not read.',
    );
    expect(why('1e3')).toContain('1e3 is not a number');
    expect(why('')).toContain('is not a number');
    expect(why('100.5')).toContain('it goes from -1 to 100');
    expect(why('0.123')).toContain('at most 2 decimals');
    expect(why('x', { ...field, min: 5, max: 9, decimals: 0 })).toContain('like 5,');
  });

  it('is no number below detection: that is never stored as one unasked', () => {
    for (const text of ['<5', '< 0.01', '<LOD', 'LOD', 'BDL', 'bd', 'ND'])
      expect(isBelowDetection(text), text).toBe(true);
    for (const text of ['5', 'nr', 'none', 'land']) expect(isBelowDetection(text), text).toBe(false);
    expect(why('<5')).toBe('<5 is below what the instrument can tell, and no number. Type nr for not read.');
  });
});
