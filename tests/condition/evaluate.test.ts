import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Condition, conditionSchema, fieldConditions } from '../../src/condition/condition.ts';
import { evaluate, type Reader, type Reading } from '../../src/condition/evaluate.ts';
import { conditionInWords } from '../../src/condition/words.ts';
import type { Tri } from '../../src/quantity/tri.ts';
import { runs } from '../support/long-run.ts';

const FIELDS = ['a', 'b', 'c'];
const reading: fc.Arbitrary<Reading> = fc.oneof(
  fc.constant<Reading>({ says: 'unknown' }),
  fc.constant<Reading>({ says: 'none' }),
  fc.integer({ min: 0, max: 5 }).map((number): Reading => ({ says: 'number', number })),
  fc.subarray(['X', 'Y', 'Z'], { minLength: 1 }).map((codes): Reading => ({ says: 'codes', codes })),
  fc.integer({ min: 1, max: 3 }).map((number): Reading => ({ says: 'level', number, code: `L${number}` })),
);
const readers = fc.record(Object.fromEntries(FIELDS.map((field) => [field, reading]))).map(
  (all): Reader =>
    (field) =>
      all[field] ?? { says: 'unknown' },
);

const field = fc.constantFrom(...FIELDS);
const number = fc.integer({ min: 0, max: 5 });
const comparison: fc.Arbitrary<Condition> = fc.oneof(
  fc.record({ field, is: fc.constantFrom('X', 'Y', 'L1') }),
  fc.record({ field, isOneOf: fc.subarray(['X', 'Y', 'L2'], { minLength: 1 }) }),
  fc.record({ field, atLeast: number }),
  fc.record({ field, moreThan: number }),
  fc.record({ field, atMost: number }),
  fc.record({ field, lessThan: number }),
  fc.record({ field, seen: fc.boolean() }),
);
const { condition: conditions } = fc.letrec<{ condition: Condition }>((tie) => ({
  condition: fc.oneof(
    { maxDepth: 3, withCrossShrink: true },
    comparison,
    fc.array(tie('condition'), { minLength: 1, maxLength: 3 }).map((all): Condition => ({ all })),
    fc.array(tie('condition'), { minLength: 1, maxLength: 3 }).map((any): Condition => ({ any })),
    tie('condition').map((not): Condition => ({ not })),
  ),
}));

/** Truth as a number, after Kleene: no < cannot tell < yes. */
const rank = (tri: Tri): number => ['no', 'cannot tell', 'yes'].indexOf(tri);

function law(name: string, holds: (a: Condition, b: Condition, read: Reader) => void): void {
  it(name, () => {
    fc.assert(fc.property(conditions, conditions, readers, holds), { numRuns: runs(2000) });
  });
}

describe('a condition, three-valued after Kleene', () => {
  law('all is the least true of its parts', (a, b, read) => {
    expect(rank(evaluate({ all: [a, b] }, read))).toBe(
      Math.min(rank(evaluate(a, read)), rank(evaluate(b, read))),
    );
  });
  law('any is the truest of its parts', (a, b, read) => {
    expect(rank(evaluate({ any: [a, b] }, read))).toBe(
      Math.max(rank(evaluate(a, read)), rank(evaluate(b, read))),
    );
  });
  law('not turns yes and no about and leaves cannot tell', (a, _b, read) => {
    expect(rank(evaluate({ not: a }, read))).toBe(2 - rank(evaluate(a, read)));
  });
  law('not of all is any of nots', (a, b, read) => {
    expect(evaluate({ not: { all: [a, b] } }, read)).toBe(evaluate({ any: [{ not: a }, { not: b }] }, read));
  });
  law('what can be told does not change when more is known', (a, _b, read) => {
    const known = evaluate(a, read);
    const blind: Reader = (name) => (name === 'b' ? { says: 'unknown' } : read(name));
    const told = evaluate(a, blind);
    if (told !== 'cannot tell') expect(told).toBe(known);
  });

  it('can’t tell anything of what was not observed', () => {
    fc.assert(
      fc.property(comparison, (each) => {
        expect(evaluate(each, () => ({ says: 'unknown' }))).toBe('cannot tell');
      }),
    );
  });
});

describe('a comparison', () => {
  const none: Reader = () => ({ says: 'none' });
  const of = (said: Reading) => () => said;

  it('counts none seen as 0', () => {
    expect(evaluate({ field: 'a', lessThan: 1 }, none)).toBe('yes');
    expect(evaluate({ field: 'a', atMost: 0 }, none)).toBe('yes');
    expect(evaluate({ field: 'a', atLeast: 1 }, none)).toBe('no');
    expect(evaluate({ field: 'a', seen: false }, none)).toBe('yes');
    expect(evaluate({ field: 'a', is: 'X' }, none)).toBe('no');
  });

  it('takes its limit in or leaves it out as it says', () => {
    const two = of({ says: 'number', number: 2 });
    expect(evaluate({ field: 'a', atLeast: 2 }, two)).toBe('yes');
    expect(evaluate({ field: 'a', moreThan: 2 }, two)).toBe('no');
    expect(evaluate({ field: 'a', atMost: 2 }, two)).toBe('yes');
    expect(evaluate({ field: 'a', lessThan: 2 }, two)).toBe('no');
  });

  it('can’t tell the size of codes that have none', () => {
    expect(evaluate({ field: 'a', atLeast: 1 }, of({ says: 'codes', codes: ['X'] }))).toBe('cannot tell');
  });

  it('knows a level by its code and by its number', () => {
    const level = of({ says: 'level', number: 2, code: 'II' });
    expect(evaluate({ field: 'a', is: 'II' }, level)).toBe('yes');
    expect(evaluate({ field: 'a', isOneOf: ['I', 'III'] }, level)).toBe('no');
    expect(evaluate({ field: 'a', moreThan: 1 }, level)).toBe('yes');
  });
});

describe('a condition in a file', () => {
  it('is read back as it was written, whatever it says', () => {
    fc.assert(
      fc.property(conditions, (each) => {
        expect(conditionSchema.parse(JSON.parse(JSON.stringify(each)))).toEqual(each);
      }),
    );
  });

  it('is refused with two comparisons, none, or an empty list', () => {
    for (const wrong of [
      { field: 'a', is: 'X', seen: true },
      { field: 'a' },
      { all: [] },
      { any: [], not: {} },
      5,
    ])
      expect(conditionSchema.safeParse(wrong).success).toBe(false);
  });

  it('gives up all its comparisons in the order they are written', () => {
    const condition: Condition = {
      all: [
        { field: 'a', is: 'X' },
        { any: [{ not: { field: 'b', seen: true } }, { field: 'c', atLeast: 1 }] },
      ],
    };
    expect(fieldConditions(condition).map((each) => each.field)).toEqual(['a', 'b', 'c']);
  });
});

describe('a condition in words', () => {
  const words = (condition: Condition) => conditionInWords(condition, (name, code) => code ?? name);

  it('reads as a person would say it', () => {
    expect(words({ field: 'pyrite', lessThan: 1 })).toBe('pyrite < 1');
    expect(words({ field: 'sulphides', of: 'pyrite', atLeast: 2 })).toBe('pyrite ≥ 2');
    expect(words({ field: 'rock', isOneOf: ['basalt', 'shale'] })).toBe('rock is basalt or shale');
    expect(words({ field: 'veins', seen: false })).toBe('no veins seen');
    expect(words({ field: 'fibre seen', seen: true })).toBe('fibre seen');
    expect(words({ field: 'fibre seen', seen: false })).toBe('no fibre seen');
    expect(words({ not: { field: 'veins', seen: true } })).toBe('not (veins seen)');
  });

  it('brackets whatever could be read two ways, and so no two conditions that can differ read alike', () => {
    const [a, b, c] = FIELDS.map((name): Condition => ({ field: name, seen: true }));
    const inner: Condition = { any: [b!, c!] };
    expect(words({ all: [a!, inner] })).toBe('a seen and (b seen or c seen)');
    fc.assert(
      fc.property(conditions, conditions, readers, (one, two, read) => {
        if (words(one) === words(two)) expect(evaluate(one, read)).toBe(evaluate(two, read));
      }),
      { numRuns: runs(2000) },
    );
  });
});
