import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { conditionSchema } from '../../../src/condition/condition.ts';
import { formatFinding } from '../../../src/finding/finding.ts';
import { loggingFile } from '../../../src/schema/read/file-schema.ts';
import { readBuiltIn, readJsonFile } from '../../../src/schema/read/json-source.ts';
import { STYLES, styleFile } from '../../../src/schema/styles/index.ts';

const shape = z.strictObject({
  depthM: z.number().min(0).max(100).optional(),
  kind: z.enum(['a', 'b']).optional(),
  when: conditionSchema.optional(),
  list: z.array(z.strictObject({ name: z.string().regex(/^[a-z]+$/, 'must be small letters') })).optional(),
});

function messages(text: string): readonly string[] {
  const read = readJsonFile({ file: 'x.json', text }, shape);
  return read.ok ? [] : read.findings.map(formatFinding);
}

describe('a JSON file written by hand', () => {
  it('may have comments', () => {
    expect(messages('{ // depth\n "depthM": 5 /* m */ }')).toEqual([]);
  });

  it('is refused at the place where it stops being JSON', () => {
    expect(messages('{\n  "depthM": 5\n  "kind": "a"\n}')).toEqual([
      'x.json:3:3: not readable here (comma expected)\n  | "kind": "a"\n' +
        '  Fix it in an editor: look for a missing comma, quote or bracket just before this place.',
    ]);
    expect(messages('')[0]).toContain('x.json:1:1: not readable here');
    expect(messages('{} trailing')[0]).toContain('x.json:1:4');
  });

  it('is refused where a member is written twice, at any depth', () => {
    expect(messages('{ "list": [{ "name": "a",\n "name": "b" }] }')).toEqual([
      'x.json:2:2: "name" is written twice in the same place\n  | "name": "b" }] }\n  Take one of the two out.',
    ]);
  });

  it('is refused when too deep or too large before a parser sees it', () => {
    expect(messages('['.repeat(100_000))[0]).toContain('brackets are more than 60 deep');
    expect(messages(' '.repeat(4_000_001))[0]).toContain('larger than 4 MB');
  });

  it('reports every fault of shape with place, excerpt and remedy', () => {
    expect(
      messages('{ "depthM": "5",\n "kind": "c",\n "dept": 1,\n "list": [{ "name": "A" }, {}] }'),
    ).toEqual([
      'x.json:1:3: "depthM" should be a number\n  | "depthM": "5"\n  Change it.',
      'x.json:2:2: "kind" is not one of the words allowed here\n  | "kind": "c"\n  Use one of: a, b.',
      'x.json:4:13: "name" must be small letters\n  | "name": "A"\n  Change it.',
      'x.json:4:28: "name" is missing\n  | {}\n  Add it (a text in quotes).',
      'x.json:3:2: "dept" is not known here\n  | "dept": 1\n  Take it out, or check its spelling.',
    ]);
    expect(messages('{ "depthM": 101 }')[0]).toContain('At most 100.');
    expect(messages('{ "depthM": -1 }')[0]).toContain('At least 0.');
  });

  it('says of a condition what is wrong with the form that comes nearest', () => {
    const text = '{ "when": { "all": [{ "field": "rock", "is": 5 }] } }';
    expect(messages(text)).toEqual([
      'x.json:1:40: "is" should be a text in quotes\n  | "is": 5\n  Change it.',
    ]);
  });

  it('never takes __proto__ for anything but an unknown member', () => {
    expect(messages('{ "__proto__": { "depthM": 5 } }')).toHaveLength(1);
  });
});

describe('a built-in style', () => {
  it('reads as a file does, its shape not checked again: each of them fits, and says the same either way', () => {
    expect(Object.keys(STYLES).length).toBeGreaterThan(0);
    for (const name of Object.keys(STYLES)) {
      const file = styleFile(name);
      if (file === undefined) throw new Error(name);
      const checked = readJsonFile(file, loggingFile);
      if (!checked.ok) throw new Error(checked.findings.map(formatFinding).join('\n'));
      const read = readBuiltIn(file);
      expect(read.value).toEqual(checked.value.value);
      expect(read.source.root).toEqual(checked.value.source.root);
    }
  });
});
