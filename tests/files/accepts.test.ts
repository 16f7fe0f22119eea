import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { accepts } from '../../src/files/accepts.ts';
import { DOCUMENT_KINDS, documentFileShape } from '../../src/files/document-file.ts';
import { projectSettings } from '../../src/project/settings.ts';
import { SAMPLE } from '../commands/support/outside.ts';
import { runs } from '../support/long-run.ts';

const takes = (shape: z.ZodType, value: unknown): boolean => shape.safeParse(value).success;

/** A value with one place of it changed: something else put there, a member taken out, renamed or added. */
const damaged = (value: unknown): fc.Arbitrary<unknown> => {
  const other = fc.oneof(
    fc.constantFrom(null, 0, 1, -1, 1.5, 1e9, '', 'x', 'none', 'trace', true, [], {}, { code: 'BAS' }),
    fc.string({ maxLength: 45 }),
  );
  if (Array.isArray(value) && value.length > 0)
    return fc.oneof(
      { weight: 1, arbitrary: other },
      {
        weight: 4,
        arbitrary: fc
          .nat(value.length - 1)
          .chain((at) => damaged(value[at]).map((each) => value.with(at, each))),
      },
    );
  if (typeof value !== 'object' || value === null || Object.keys(value).length === 0) return other;
  const record = value as Readonly<Record<string, unknown>>;
  const key = fc.constantFrom(...Object.keys(record));
  const without = ([name]: readonly [string]): unknown => {
    const { [name]: _, ...rest } = record;
    return rest;
  };
  return fc.oneof(
    {
      weight: 6,
      arbitrary: key.chain((name) => damaged(record[name]).map((each) => ({ ...record, [name]: each }))),
    },
    { weight: 1, arbitrary: fc.tuple(key).map(without) },
    { weight: 1, arbitrary: other.map((each) => ({ ...record, more: each })) },
  );
};

/** Everything that is in the sample project, with the shape that it has to have. */
const held: readonly (readonly [string, z.ZodType, unknown])[] = Object.entries(DOCUMENT_KINDS).flatMap(
  ([kind, { folder, nouns = {} }]) =>
    folder === 'results'
      ? []
      : readdirSync(join(SAMPLE, folder)).flatMap((file) => {
          const { tables } = JSON.parse(readFileSync(join(SAMPLE, folder, file), 'utf8'));
          return Object.entries(tables as Record<string, object>).flatMap(([table, things]) =>
            Object.values(things)
              .slice(0, 6)
              .map((thing) => [`${kind} ${table}`, nouns[table] as z.ZodType, thing] as const),
          );
        }),
);

describe('whether a shape takes a value', () => {
  it('is what zod says of every thing of a project, whole or with a place of it changed', () => {
    fc.assert(
      fc.property(
        fc
          .constantFrom(...held)
          .chain(([noun, shape, thing]) =>
            fc.tuple(fc.constant(noun), fc.constant(shape), damaged(thing), fc.constant(thing)),
          ),
        ([, shape, broken, thing]) => {
          expect(accepts(shape)(thing)).toBe(true);
          expect(accepts(shape)(broken)).toBe(takes(shape, broken));
        },
      ),
      { numRuns: runs(2000) },
    );
  });

  it('is what zod says of the file of a hole and of the settings', () => {
    for (const [file, shape] of [
      ['holes/MBRC004.json', documentFileShape],
      ['holes/MBRC002.json', documentFileShape],
      ['project.json', projectSettings],
    ] as const) {
      const whole = JSON.parse(readFileSync(join(SAMPLE, file), 'utf8'));
      expect(accepts(shape)(whole)).toBe(true);
      fc.assert(
        fc.property(damaged(whole), (broken) => {
          expect(accepts(shape)(broken)).toBe(takes(shape, broken));
        }),
      );
    }
  });

  it.each<[string, z.ZodType, readonly unknown[]]>([
    [
      'an optional member',
      z.strictObject({ a: z.string().optional() }),
      [{}, { a: 'x' }, { a: 1 }, { b: 1 }],
    ],
    ['anything', z.strictObject({ a: z.unknown() }), [{}, { a: null }, []]],
    ['more members', z.looseObject({ a: z.literal(1) }), [{ a: 1, b: 2 }, { b: 2 }, 1, null]],
    ['unknown members left out', z.object({ a: z.int() }), [{ a: 1, b: 2 }, { a: 1.5 }, { a: 2 ** 53 }]],
    ['a default', z.strictObject({ a: z.string().default('x') }), [{}, { a: 1 }, { a: 'y' }]],
    ['a limit', z.number().gt(1).lt(3), [1, 2, 3, Number.NaN, '2']],
    ['a pattern', z.string().regex(/^a+$/), ['aa', 'b', 1]],
    ['a date', z.iso.date(), ['2026-03-14', '2026-3-14']],
    [
      'a rule of its own',
      z.array(z.int()).refine((list) => list.length < 2, 'too many'),
      [[], [1], [1, 2], ['x']],
    ],
    ['a fixed list', z.tuple([z.string(), z.int()]), [['a', 1], ['a'], ['a', 1, 2], ['a', 'b']]],
    [
      'a choice',
      z.discriminatedUnion('k', [
        z.object({ k: z.literal('a') }),
        z.object({ k: z.literal('b'), n: z.int() }),
      ]),
      [{ k: 'a' }, { k: 'b' }, { k: 'b', n: 1 }, { k: 'c' }],
    ],
    ['words', z.enum(['a', 'b']), ['a', 'c', 1]],
    ['names of a kind', z.record(z.enum(['a', 'b']), z.int()), [{ a: 1, b: 2 }, { a: 1 }, { c: 1 }]],
    ['nothing', z.nullable(z.string()), [null, 'a', 1]],
  ])('of %s', (_, shape, values) => {
    for (const value of values) expect([value, accepts(shape)(value)]).toEqual([value, takes(shape, value)]);
  });
});
