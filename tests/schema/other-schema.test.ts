import { describe, expect, it } from 'vitest';
import { checkSchema } from '../../src/schema/check/check-schema.ts';
import { strokesOf } from '../../src/schema/strokes.ts';
import { otherSchema } from '../support/other-schema.ts';
import { resolveStyle } from '../support/styles.ts';

const other = otherSchema();
const style = resolveStyle('orogenic-gold')!;

describe('the second schema of the tests', () => {
  it('passes the schema check without a finding', () => {
    expect(checkSchema(other)).toEqual([]);
  });

  it('has every kind of field, and shares no field, list, scale or code with the demo’s', () => {
    const kinds = new Set(other.fields.map((field) => field.kind));
    expect([...kinds].sort()).toEqual([
      'code',
      'flag',
      'level',
      'levels',
      'number',
      'percent',
      'percents',
      'text',
    ]);
    const names = (schema: typeof other) => [
      ...schema.fields.map((field) => `field ${field.name}`),
      ...Object.keys(schema.lists).map((name) => `list ${name}`),
      ...Object.keys(schema.scales).map((name) => `scale ${name}`),
      ...Object.values(schema.lists).flatMap((list) => list.codes.map((code) => `code ${code.code}`)),
    ];
    const shared = names(other).filter((name) => names(style).includes(name));
    expect(shared).toEqual([]);
  });

  it('types other things with strokes that both have', () => {
    const inStyle = new Map(strokesOf(style).map((stroke) => [stroke.strokes, stroke.label]));
    const both = strokesOf(other).filter((stroke) => inStyle.has(stroke.strokes));
    expect(both.length).toBeGreaterThan(2);
    for (const stroke of both) expect(inStyle.get(stroke.strokes)).not.toBe(stroke.label);
  });
});
