import fc from 'fast-check';
import { findNodeAtLocation, parseTree } from 'jsonc-parser';
import { describe, expect, it } from 'vitest';
import { offsetOf } from '../../src/files/json-offset.ts';

type Path = (string | number)[];

/** Every path into a value. */
function pathsOf(value: unknown, path: Path = []): readonly Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const members = Array.isArray(value)
    ? value.map((each, index) => [index, each] as const)
    : Object.entries(value);
  return [path, ...members.flatMap(([name, each]) => pathsOf(each, [...path, name]))];
}

describe('the place of a value in a text', () => {
  it('is the one that a parser of the whole text gives, for any JSON and any path into it', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), fc.constantFrom(0, 1, 3), (value, indent) => {
        const text = ` ${JSON.stringify(value, null, indent)}\n`;
        const root = parseTree(text);
        for (const path of pathsOf(value))
          expect(offsetOf(text, path)).toBe(root && findNodeAtLocation(root, path)?.offset);
      }),
      { seed: 20260314, numRuns: 300 },
    );
  });

  it('is that of the nearest value around it where it is not there', () => {
    const text = '{"a": {"b": [1, 2]}}';
    expect(offsetOf(text, ['a', 'c', 'd'])).toBe(text.indexOf('{"b"'));
    expect(offsetOf(text, ['a', 'b', 7])).toBe(text.indexOf('[1'));
    expect(offsetOf(text, ['a', 'b', 0, 'x'])).toBe(text.indexOf('1'));
  });
});
