import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plan } from '../../../src/hole/header.ts';
import { readExpected } from '../../../src/survey/expected/expected-said.ts';
import { SCHEMA } from '../../termination/build.ts';

describe('an expected contact or zone, as said', () => {
  it.each([
    ['shale 55', { name: 'shale', fromMm: 55_000 }],
    ['top of fresh rock 40.5', { name: 'top of fresh rock', fromMm: 40_500 }],
    ['old stope 80-84 void', { name: 'old stope', fromMm: 80_000, toMm: 84_000, hazard: 'void' }],
    [
      'lode 2 70-78 seen sulphides PYR>=2',
      {
        name: 'lode 2',
        fromMm: 70_000,
        toMm: 78_000,
        seen: { field: 'sulphides', of: 'PYR', atLeast: 2 },
      },
    ],
    [
      'seam 60 fibre seen rock VOI',
      { name: 'seam', fromMm: 60_000, hazard: 'fibre', seen: { field: 'rock', is: 'VOI' } },
    ],
    [
      'lode 70 seen sulphides PYR',
      { name: 'lode', fromMm: 70_000, seen: { field: 'sulphides', of: 'PYR', seen: true } },
    ],
    ['veins 70 seen contact', { name: 'veins', fromMm: 70_000, seen: { field: 'contact', seen: true } }],
    [
      'fresh 40 seen weathering < 2',
      { name: 'fresh', fromMm: 40_000, seen: { field: 'weathering', lessThan: 2 } },
    ],
  ])('%s', (said, expected) => {
    expect(readExpected(SCHEMA, said)).toEqual({ ok: true, expected });
  });

  it('is read as the plan keeps it or refused in words, whatever is typed', () => {
    const word = fc.oneof(
      fc.constantFrom(
        'lode',
        '70',
        '70-78',
        'seen',
        'sulphides',
        'PYR>=2',
        'void',
        '>=',
        '__proto__',
        '.',
        ' ',
      ),
      fc.string({ maxLength: 6 }),
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 8 }), (words) => {
        const read = readExpected(SCHEMA, words.join(' '));
        if (!read.ok) expect(read.problem.trim()).not.toBe('');
        else expect(plan.shape.expects.safeParse([read.expected]).success).toBe(true);
      }),
    );
  });

  it.each([
    ['', 'a name and a depth are wanted'],
    ['55', 'a name and a depth are wanted'],
    ['shale', 'a name and a depth are wanted'],
    ['shale 78-70', 'the bottom of the zone is not below its top'],
    ['shale 5.5.5', 'is not a depth in metres'],
  ])('%j is refused: %s', (said, why) => {
    expect(readExpected(SCHEMA, said)).toMatchObject({ ok: false, problem: expect.stringContaining(why) });
  });
});
