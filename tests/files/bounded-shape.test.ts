import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { boundedShape } from '../../src/files/bounded-shape.ts';

/** A shape with everything that a file of ours has in it: lists with and without limits, tables, unions, itself. */
const shape = () => {
  type Node = { readonly name: string; readonly of?: readonly Node[] | undefined };
  const node: z.ZodType<Node> = z.strictObject({
    name: z.string(),
    get of(): z.ZodOptional<z.ZodArray<z.ZodType<Node>>> {
      return z.array(node).optional();
    },
  }) as never;
  return z.strictObject({
    list: z.array(z.union([z.int(), z.strictObject({ a: z.array(z.string()).min(1).max(3) })])),
    table: z.record(z.string().min(1), node),
    named: z.record(z.enum(['x', 'y']), z.int()).optional(),
    condition: z.lazy(() => z.array(z.int()).min(2)).optional(),
  });
};

const member = fc.oneof(
  fc.integer(),
  fc.constant('x'),
  fc.record({ a: fc.array(fc.oneof(fc.string(), fc.integer()), { maxLength: 4 }) }),
);
const tree = fc.letrec((tie) => ({
  node: fc.record(
    {
      name: fc.oneof({ weight: 9, arbitrary: fc.string() }, { weight: 1, arbitrary: fc.integer() }),
      of: fc.array(tie('node'), { maxLength: 3 }),
    },
    { requiredKeys: ['name'] },
  ),
})).node;
const file = fc.record(
  {
    list: fc.array(member, { maxLength: 80 }),
    table: fc.dictionary(fc.string({ minLength: 0, maxLength: 3 }), tree, { maxKeys: 40 }),
    named: fc.dictionary(fc.constantFrom('x', 'y', 'z'), fc.integer()),
    condition: fc.array(fc.integer(), { maxLength: 4 }),
  },
  { requiredKeys: ['list', 'table'] },
);

describe('a shape that stops early', () => {
  it('takes and refuses the same files as the whole shape, and names faults that the whole shape names', () => {
    const whole = shape();
    const early = boundedShape(shape());
    fc.assert(
      fc.property(file, (value) => {
        const all = whole.safeParse(value).error?.issues ?? [];
        const some = early.safeParse(value).error?.issues ?? [];
        expect(some.length > 0).toBe(all.length > 0);
        const names = all.map((each) => JSON.stringify([each.code, each.path]));
        for (const each of some) expect(names).toContain(JSON.stringify([each.code, each.path]));
      }),
      { seed: 20260314, numRuns: 400 },
    );
  });

  it('names twenty faults of a list at least, where there are so many, and little more', () => {
    const early = boundedShape(shape());
    const issues = (count: number): number =>
      early.safeParse({ list: Array.from({ length: count }, () => 'x'), table: {} }).error?.issues.length ??
      0;
    expect(issues(3)).toBe(3);
    expect(issues(40_000)).toBeGreaterThanOrEqual(20);
    expect(issues(40_000)).toBeLessThan(60);
  });
});
