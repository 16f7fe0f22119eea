import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { FindingKind } from '../../src/finding/finding.ts';

const folder = join(import.meta.dirname, '../../src/schema/findings');
const modules = await Promise.all(
  readdirSync(folder).map(async (name) => {
    const module = (await import(join(folder, name))) as Readonly<Record<string, FindingKind>>;
    return [name, Object.values(module)] as const;
  }),
);
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
  'reading-not-taken': 'is no number',
  'schema-bag-number-reads-as-line': 'schema-bag-number-reads-as-line',
};

describe('a kind of finding of the schema', () => {
  it('has a file of its own and a code of its own', () => {
    for (const [name, kinds] of modules) expect(kinds, name).toHaveLength(1);
    const codes = modules.map(([, [kind]]) => kind?.code);
    expect(new Set(codes).size).toBe(modules.length);
    expect(modules.length).toBeGreaterThan(50);
  });

  for (const [name, [kind]] of modules)
    it(`${name} says in sentences what is wrong and why it matters, and is raised in a test`, () => {
      expect(kind?.code).toMatch(/^[a-z]+(-[a-z]+)+$/);
      expect(kind?.title).toMatch(/^[A-Z].*\.$/);
      expect(kind?.rationale).toMatch(/^[A-Z].*\.$/);
      expect(tests).toContain(BY_WORDS[kind?.code ?? ''] ?? kind?.code);
    });
});
