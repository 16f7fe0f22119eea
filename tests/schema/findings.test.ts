import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { kindsIn } from '../../src/check/registry.ts';
import * as schema from '../../src/schema/findings.ts';

const kinds = kindsIn(schema);
const tests = readdirSync(import.meta.dirname, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.test.ts') && name !== 'findings.test.ts')
  .map((name) => readFileSync(join(import.meta.dirname, name), 'utf8'))
  .join('\n');
/** What readable text says of files that are no JSON is tested by its words, not by the code. */
const BY_WORDS: Readonly<Record<string, string>> = {
  'schema-not-json': 'not readable here',
  'schema-member-twice': 'is written twice in the same place',
  'schema-shape': 'is not known here',
  'codes-column-missing': 'no column is called',
  'codes-line-unusable': 'the code is empty',
  'codes-not-csv': 'not readable as CSV',
  'reading-not-taken': 'is not a number',
  'schema-bag-number-reads-as-line': 'schema-bag-number-reads-as-line',
};

describe('a kind of finding of the schema', () => {
  it('has a code of its own', () => {
    const codes = kinds.map((kind) => kind.code);
    expect(new Set(codes).size).toBe(codes.length);
    expect(codes.length).toBeGreaterThan(50);
  });

  for (const { code, title, rationale } of kinds)
    it(`${code} says in sentences what is wrong and why it matters, and is raised in a test`, () => {
      expect(code).toMatch(/^[a-z]+(-[a-z]+)+$/);
      expect(title).toMatch(/^[A-Z].*\.$/);
      expect(rationale).toMatch(/^[A-Z].*\.$/);
      expect(tests).toContain(BY_WORDS[code] ?? code);
    });
});
