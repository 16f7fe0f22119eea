import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/finding/finding.ts';
import { proposePairs } from '../../src/schema/change/propose-pairs.ts';
import { cribLines } from '../../src/schema/print/crib.ts';
import { rowJsonSchema } from '../../src/schema/print/row-json-schema.ts';
import { checkLoggingFile } from '../../src/schema/read/check-file.ts';
import { runs } from '../support/long-run.ts';
import { SMALL } from './build.ts';

const TEXT = JSON.stringify(SMALL, null, 1);

/** Reads and checks a text; whatever it is, the answer is findings with a place and a remedy, or a schema that works. */
function read(text: string): readonly Finding[] {
  const { schema, findings } = checkLoggingFile({ file: 'logging.json', text });
  for (const finding of findings) {
    expect(finding.place.file).toBe('logging.json');
    expect(finding.remedy).not.toBe('');
    expect(finding.problem).not.toMatch(/undefined|\[object|Invalid/);
  }
  if (schema !== undefined && findings.every((finding) => finding.severity !== 'fault')) {
    expect(cribLines(schema, 80).length).toBeGreaterThan(0);
    expect(rowJsonSchema(schema)).toHaveProperty('$schema');
    expect(proposePairs(schema)).toBeInstanceOf(Array);
  } else expect(findings).not.toEqual([]);
  return findings;
}

/** The small schema with one value, anywhere in it, put in the place of another or left out. */
function withOneChanged(value: unknown, at: number, put: unknown): unknown {
  let count = 0;
  const walk = (each: unknown): unknown => {
    count += 1;
    if (count - 1 === at) return put;
    if (Array.isArray(each)) return each.map(walk);
    if (typeof each !== 'object' || each === null) return each;
    return Object.fromEntries(Object.entries(each).map(([name, inner]) => [name, walk(inner)]));
  };
  return walk(value);
}

const odd = fc.oneof(
  fc.constantFrom<unknown>(
    undefined,
    null,
    '',
    'nr',
    'constructor',
    '__proto__',
    'toString',
    0,
    -1,
    1e300,
    2 ** 53,
    true,
  ),
  fc.constantFrom<unknown>(
    [],
    {},
    [[]],
    ['rock'],
    { field: 'rock', seen: true },
    '\u001b[2J',
    '\u202egpj',
    'ﬀ',
    '🪨',
  ),
  fc.jsonValue(),
);

describe('a logging file that something has been done to', () => {
  it('gives findings with place and remedy, or a schema that works: one value changed', () => {
    fc.assert(
      fc.property(fc.nat(180), odd, (at, put) => {
        read(JSON.stringify(withOneChanged(SMALL, at, put)) ?? '');
      }),
      { numRuns: runs(700) },
    );
  });

  it('gives findings with place and remedy, or a schema that works: some characters changed', () => {
    fc.assert(
      fc.property(fc.nat(TEXT.length), fc.nat(4), fc.string({ maxLength: 4 }), (at, out, put) => {
        read(TEXT.slice(0, at) + put + TEXT.slice(at + out));
      }),
      { numRuns: runs(300) },
    );
  });

  it('gives findings for any text at all', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json(), fc.string({ unit: 'binary' })), (text) => {
        expect(read(text).length).toBeGreaterThan(0);
      }),
      { numRuns: runs(300) },
    );
  });
});
