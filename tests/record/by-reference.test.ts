import { describe, expect, it } from 'vitest';
import { byReference } from '../../src/record/by-reference.ts';

describe('a view by reference', () => {
  it('is worked out once for the same two things, and again when either is another object', () => {
    let worked = 0;
    const view = byReference((a: { readonly of: number }, b: { readonly of: number }) => {
      worked += 1;
      return a.of + b.of;
    });
    const one = { of: 1 };
    const two = { of: 2 };
    expect([view(one, two), view(one, two)]).toEqual([3, 3]);
    expect(worked).toBe(1);
    expect(view({ of: 5 }, two)).toBe(7);
    expect(view(one, { of: 9 })).toBe(10);
    expect(worked).toBe(3);
  });

  it('keeps an answer of undefined as well as any other', () => {
    let worked = 0;
    const view = byReference((_a: object, _b: object): undefined => {
      worked += 1;
      return undefined;
    });
    const [one, two] = [{}, {}];
    expect([view(one, two), view(one, two)]).toEqual([undefined, undefined]);
    expect(worked).toBe(1);
  });
});
