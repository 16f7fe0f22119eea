import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonicalJson, own, sameJson, setOwn } from '../../src/record/json.ts';
import { runs } from '../support/long-run.ts';
import { aName, aValue, HOSTILE } from './build.ts';

/** The same value with the members of every object in another order. */
function turned(value: unknown): unknown {
  if (value === null || typeof value !== 'object') return value;
  if (Array.isArray(value)) return value.map(turned);
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, item]) => [key, turned(item)]),
  );
}

describe('canonical JSON', () => {
  test('is JSON that reads back as the value', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const text = canonicalJson(value);
        expect(canonicalJson(JSON.parse(text))).toBe(text);
        expect(sameJson(JSON.parse(text), value)).toBe(true);
      }),
    );
  });

  test('does not depend on the order of keys', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(canonicalJson(turned(value))).toBe(canonicalJson(value));
      }),
    );
  });

  test('tells different values apart', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (a, b) => {
        const alike = JSON.stringify(turned(a)) === JSON.stringify(turned(b));
        if (!alike && canonicalJson(a) === canonicalJson(b))
          expect(JSON.parse(canonicalJson(a))).toEqual(JSON.parse(JSON.stringify(b)));
      }),
    );
  });

  test('sorts any number of keys by UTF-16 units', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.string({ maxLength: 2 }), { maxLength: 60 }), (keys) => {
        const text = canonicalJson(Object.fromEntries(keys.map((key) => [key, 1])));
        expect(text).toBe(
          `{${[...keys]
            .sort()
            .map((key) => `${JSON.stringify(key)}:1`)
            .join(',')}}`,
        );
      }),
    );
  });

  test('keeps the order of a list and every blank in a text', () => {
    expect(canonicalJson([2, 1, ' a b '])).toBe('[2,1," a b "]');
  });

  test('leaves out undefined members, as a file does', () => {
    expect(canonicalJson({ b: undefined, a: 1 })).toBe('{"a":1}');
  });

  test.each(HOSTILE)('keeps a member named %s', (name) => {
    const held = JSON.parse(`{"${name}":1,"a":2}`);
    expect(JSON.parse(canonicalJson(held))).toEqual(held);
    expect(canonicalJson(held)).toContain(`"${name}":1`);
  });
});

describe('sameness of JSON', () => {
  test('is sameness of canonical texts', () => {
    const aPair = fc.oneof(
      fc.tuple(fc.jsonValue({ maxDepth: 3 }), fc.jsonValue({ maxDepth: 3 })),
      fc.jsonValue().map((value) => [value, turned(value)]),
      fc.tuple(aValue, aValue),
      fc.tuple(
        fc.constantFrom<unknown>([undefined], { a: undefined }, Number.NaN),
        fc.constantFrom<unknown>([null], {}, null),
      ),
    );
    fc.assert(
      fc.property(aPair, ([a, b]) => {
        expect(sameJson(a, b)).toBe(canonicalJson(a) === canonicalJson(b));
      }),
      { numRuns: runs(500) },
    );
  });

  test('takes nothing there and null for two things', () => {
    expect(sameJson(undefined, null)).toBe(false);
    expect(sameJson(null, undefined)).toBe(false);
    expect(sameJson(undefined, undefined)).toBe(true);
    expect(sameJson(null, null)).toBe(true);
  });
});

describe('members by a name from a file', () => {
  test('what every object inherits is not there unless it was set', () => {
    for (const name of HOSTILE) expect(own({}, name)).toBeUndefined();
    expect(own(undefined, 'a')).toBeUndefined();
  });

  test('whatever is set is read back, and nothing else changes', () => {
    fc.assert(
      fc.property(aName, aValue, (name, value) => {
        const record: Record<string, unknown> = {};
        setOwn(record, name, value);
        expect(own(record, name)).toBe(value);
        expect(Object.keys(record)).toEqual([name]);
        expect(Object.getPrototypeOf(record)).toBe(Object.prototype);
      }),
    );
    expect(Object.keys(Object.prototype)).toEqual([]);
  });
});
