import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DOCUMENT_LIMITS, jsonFault, OTHER_LIMITS, readJsonText } from '../../src/files/read-json.ts';
import { formatFinding } from '../../src/finding/finding.ts';
import type { Json } from '../../src/record/json.ts';

const read = (text: string | Uint8Array, limits = OTHER_LIMITS) =>
  readJsonText(typeof text === 'string' ? new TextEncoder().encode(text) : text, 'project.json', limits);

const firstFinding = (text: string | Uint8Array) => {
  const result = read(text);
  if (result.ok) throw new Error('was read');
  return result.findings[0];
};

describe('JSON that is read', () => {
  it('is what JSON.parse makes of it, for any JSON value', () => {
    fc.assert(
      fc.property(fc.json({ noUnicodeString: false }), (text) => {
        fc.pre(!/"(__proto__|constructor|toString|valueOf|hasOwnProperty|isPrototypeOf)"/.test(text));
        const result = read(text);
        if (result.ok) expect(result.value.value).toEqual(JSON.parse(text));
        else expect(result.findings[0]?.code).toBe('unsafe-json');
      }),
    );
  });

  it('is refused wherever a name is given twice, at any depth, however it is written', () => {
    const said = (text: string) => read(text).ok;
    expect(said('{"a":1,"\\u0061":2}')).toBe(false);
    expect(said('[{"b":{"a:":1,"a":":"}},{"a":1}]')).toBe(true);
    expect(said('{"a":"{\\"b\\":1,\\"b\\":2}","b":[{"c":1},{"c":2}]}')).toBe(true);
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('a', 'b', 'c', 'd:', 'e\\"'), { maxLength: 4 }),
        fc.nat(3),
        (names, depth) => {
          const inner = `{${names.map((name) => `"${name}": [":", {"a": 1}]`).join(',')}}`;
          const text = '['.repeat(depth) + inner + ']'.repeat(depth);
          expect(said(text)).toBe(new Set(names).size === names.length);
        },
      ),
    );
  });

  it('may begin with a byte order mark, which is no part of its text', () => {
    const result = read('\uFEFF{"a":1}');
    expect(result.ok && result.value).toEqual({ file: 'project.json', text: '{"a":1}', value: { a: 1 } });
  });

  it('takes decimals and the largest whole number that is exact', () => {
    expect(read('[1.5, -2e3, 9007199254740991]').ok).toBe(true);
  });
});

describe('JSON that is refused, with its place', () => {
  it.each([
    ['{\n "a": 1,\n "a": 2\n}', 3, 2, 'a is given twice'],
    ['{"a": {"b": 1, "c": 2, "b": 3}}', 1, 24, 'b is given twice'],
    ['{"__proto__": {"admin": true}}', 1, 2, 'the name __proto__ is reserved'],
    ['{"constructor": 1}', 1, 2, 'the name constructor is reserved'],
    ['{"n": 9007199254740993}', 1, 7, '9007199254740993 is too large to be kept exactly'],
    ['{"n": 1e999}', 1, 7, '1e999 is too large to be kept exactly'],
    ['{"a": 1,}', 1, 9, 'a name in double quotes is missing before this (or a comma is too many)'],
    ['{"a": 1 "b": 2}', 1, 9, 'a comma is missing before this'],
    ['{"a": 1} x', 1, 10, 'this is no JSON value'],
    ['// note\n{}', 1, 1, 'comments are not JSON'],
    ['', 1, 1, 'a value is missing before this (or a comma is too many)'],
    ['{"a": "b', 1, 7, 'a text is not closed with a double quote'],
  ])('%j at %i:%i: %s', (text, line, column, problem) => {
    const finding = firstFinding(text);
    expect(finding?.problem).toBe(problem);
    expect(finding?.place).toEqual({ file: 'project.json', line, column });
    expect(finding?.remedy).not.toBe('');
  });

  it('is not gone through where one object holds more names than any of ours', () => {
    const names = (count: number) =>
      `{"of": {${Array.from({ length: count }, (_, index) => `"${index.toString(36)}":1`).join(',')}}}`;
    expect(read(names(250_000)).ok).toBe(true);
    const finding = firstFinding(names(250_001));
    expect(finding?.code).toBe('unsafe-json');
    expect(finding?.problem).toBe('more than 250000 names are in one object');
  });

  it('names the line of a byte that is not UTF-8', () => {
    const finding = firstFinding(new Uint8Array([0x7b, 0x0a, 0x22, 0xff, 0x22, 0x7d]));
    expect(finding?.place).toEqual({ file: 'project.json', line: 2 });
    expect(finding?.problem).toBe('a byte here is not UTF-8 text');
  });

  it('stops at the depth limit before any parser runs, however deep the rest is', () => {
    const finding = firstFinding('['.repeat(1_000_000));
    expect(finding?.problem).toBe('it is nested more than 64 deep');
    expect(finding?.place.column).toBe(65);
  });

  it('does not count brackets inside texts', () => {
    expect(read(JSON.stringify({ a: `${'['.repeat(500)}\\"${'{'.repeat(500)}` })).ok).toBe(true);
  });

  it('is not parsed at all past the size limit', () => {
    const result = read(new Uint8Array(OTHER_LIMITS.bytes + 1));
    expect(result.ok ? '' : formatFinding(result.findings[0]!)).toBe(
      'project.json: it is 5 MB; at most 4 MB is read\n  No file of ours is that large: look at where it came from. Nothing was changed.',
    );
  });
});

describe('a value about to be written', () => {
  it('has no fault exactly where its text reads back', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 5 }), (value) => {
        const fault = jsonFault(value as Json, 64);
        expect(read(JSON.stringify(value), DOCUMENT_LIMITS).ok).toBe(fault === undefined);
      }),
    );
  });

  it.each<[Json, string]>([
    [{ a: [{ toString: 1 }] }, 'the name toString is reserved'],
    [[2 ** 53], '9007199254740992 is too large to be kept exactly'],
    [Number.NaN, 'NaN is too large to be kept exactly'],
  ])('%j: %s', (value, fault) => {
    expect(jsonFault(value, 64)).toBe(fault);
  });

  it('is refused where it is nested too deep', () => {
    expect(jsonFault([[[1]]], 2)).toBe('it is nested too deep');
    expect(jsonFault([[[1]]], 3)).toBeUndefined();
  });
});
