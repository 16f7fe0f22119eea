import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { proposeCode, proposePairs } from '../../../src/schema/change/propose-pairs.ts';
import { checkSchema } from '../../../src/schema/check/check-schema.ts';
import type { Code, LoggingSchema } from '../../../src/schema/logging-schema.ts';
import { schemas } from '../../support/arbitrary-schema.ts';
import { resolveStyle } from '../../support/styles.ts';

const style = resolveStyle('orogenic-gold')!;

function withPairs(schema: LoggingSchema): LoggingSchema {
  const pairs = new Map(proposePairs(schema).map(({ list, code, pair }) => [`${list} ${code}`, pair]));
  const lists = Object.entries(schema.lists).map(([name, list]) => {
    const codes = list.codes.map((code): Code => {
      const pair = pairs.get(`${name} ${code.code}`);
      return pair === undefined ? code : { ...code, pair };
    });
    return [name, { ...list, codes }];
  });
  return { ...schema, lists: Object.fromEntries(lists) };
}

function library(labels: readonly string[]): LoggingSchema {
  const rock = style.fields[0]!;
  const codes = labels.map((label, index) => ({ code: String(index), label, look: '' }));
  return { ...style, fields: [rock], lists: { rocks: { name: 'rocks', label: 'rocks', codes } }, scales: {} };
}

describe('proposed pairs', () => {
  it('are the letters that a person would think of first', () => {
    const schema = library(['basalt', 'quartz vein', 'shale']);
    expect(proposePairs(schema).map(({ pair }) => pair)).toEqual(['bs', 'qv', 'sh']);
  });

  it('bring no new finding into a schema', () => {
    fc.assert(
      fc.property(schemas, (schema) => {
        const faults = (each: LoggingSchema) =>
          checkSchema(each).filter((finding) => finding.severity === 'fault');
        expect(faults(withPairs(schema))).toEqual(faults(schema));
      }),
      { numRuns: 60 },
    );
  });

  it('give an imposed library of 60 terms pairs that stand apart, all but a few', () => {
    const labels = Array.from(
      { length: 60 },
      (_, index) => `${'abcdefghijklmnopqrst'[index % 20]}${'aeiou'[index % 5]}term ${index}`,
    );
    const schema = library(labels);
    expect(proposePairs(schema).length).toBeGreaterThanOrEqual(58);
    expect(
      checkSchema(withPairs(schema)).filter((finding) => finding.code.startsWith('schema-strokes')),
    ).toEqual([]);
  });

  it('leave codes alone that have one or are retired', () => {
    const schema = library(['basalt', 'shale']);
    const [basalt, shale] = schema.lists.rocks!.codes as [Code, Code];
    const codes = [
      { ...basalt, pair: 'zz' },
      { ...shale, retiredSince: '2026-01-01' },
    ];
    expect(proposePairs({ ...schema, lists: { rocks: { ...schema.lists.rocks!, codes } } })).toEqual([]);
  });

  it('of the starter style’s pairless codes are all clear of what is there', () => {
    const near = checkSchema(withPairs(style)).filter((finding) => finding.code === 'schema-strokes-near');
    expect(near).toEqual([]);
  });
});

describe('a proposed code', () => {
  it('is three letters of the term that no list has yet', () => {
    expect(proposeCode(style, 'dunite')).toBe('DUN');
    expect(proposeCode(style, 'basanite')).toBe('BAA');
    expect(proposeCode(style, 'ox')).toBeUndefined();
  });
});
