import { describe, expect, test } from 'vitest';
import { type Tri, triAll, triAny, triNot, triOf } from '../../src/quantity/tri.ts';

const ALL: readonly Tri[] = ['yes', 'no', 'cannot tell'];
const pairs = ALL.flatMap((a) => ALL.map((b) => [a, b] as const));
const triples = pairs.flatMap(([a, b]) => ALL.map((c) => [a, b, c] as const));
const and = (a: Tri, b: Tri) => triAll([a, b]);
const or = (a: Tri, b: Tri) => triAny([a, b]);

/** What can be known where a "cannot tell" may turn out either way: the definition, by trying both. */
function known(values: readonly Tri[], outcome: (known: readonly boolean[]) => boolean): Tri {
  const worlds = values.reduce<readonly (readonly boolean[])[]>(
    (all, value) =>
      all.flatMap((world) =>
        (value === 'cannot tell' ? [true, false] : [value === 'yes']).map((one) => [...world, one]),
      ),
    [[]],
  );
  const outcomes = new Set(worlds.map(outcome));
  return outcomes.size === 2 ? 'cannot tell' : triOf(outcomes.has(true));
}

describe('three-valued truth', () => {
  test('says yes or no exactly where every way of filling what is not known agrees', () => {
    for (const values of [[], ...ALL.map((a) => [a]), ...pairs, ...triples]) {
      expect(triAll(values)).toBe(known(values, (world) => world.every(Boolean)));
      expect(triAny(values)).toBe(known(values, (world) => world.some(Boolean)));
    }
    for (const value of ALL) expect(triNot(value)).toBe(known([value], ([one]) => !one));
  });

  test('holds the laws of Kleene: order and grouping do not matter, De Morgan, twice not', () => {
    for (const [a, b, c] of triples) {
      expect(and(a, b)).toBe(and(b, a));
      expect(or(a, b)).toBe(or(b, a));
      expect(and(and(a, b), c)).toBe(and(a, and(b, c)));
      expect(or(or(a, b), c)).toBe(or(a, or(b, c)));
      expect(and(a, or(b, c))).toBe(or(and(a, b), and(a, c)));
      expect(and(a, or(a, b))).toBe(a);
      expect(triNot(and(a, b))).toBe(or(triNot(a), triNot(b)));
      expect(triNot(triNot(a))).toBe(a);
    }
  });

  test('has no excluded middle: what cannot be told is not settled by its opposite', () => {
    expect(or('cannot tell', triNot('cannot tell'))).toBe('cannot tell');
  });
});
