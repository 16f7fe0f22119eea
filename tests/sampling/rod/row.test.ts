import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Bag } from '../../../src/hole/bags.ts';
import { rodCheck } from '../../../src/sampling/rod/rod-check.ts';
import { issue } from '../../../src/sampling/stream/issue.ts';
import type { StreamState } from '../../../src/sampling/stream/stream.ts';
import { runs } from '../../support/long-run.ts';
import { atCollar, primary, sampling } from '../build.ts';

/** A hole with rods done, some of them read, and one more drilled; a spare may hang at a metre of it. */
const state = fc
  .record({
    first: fc.integer({ min: 121, max: 175 }),
    rods: fc.integer({ min: 0, max: 3 }),
    read: fc.boolean(),
    spareAt: fc.option(fc.integer({ min: 0, max: 5 }), { nil: undefined }),
    noReturnAt: fc.option(fc.integer({ min: 0, max: 5 }), { nil: undefined }),
  })
  .map(({ first, rods, read, spareAt, noReturnAt }): StreamState => {
    let made: StreamState = atCollar(`ZQ000${first}`, 'ZQ000320');
    for (let rod = 1; rod <= rods; rod++) {
      const drilled = { ...made, drilledMm: rod * 6000 };
      made = {
        ...drilled,
        bags: [...made.bags, ...issue(sampling(), drilled).map((bag) => ({ ...bag, rod: `r${rod}` }))],
      };
    }
    const top = rods * 6;
    const spare: readonly Bag[] =
      spareAt === undefined
        ? []
        : [{ ...primary('ZQ000310', top + spareAt, top + spareAt + 1), byHand: true, reason: 'torn calico' }];
    return {
      ...made,
      ...(read && rods > 0 ? { readMm: rods * 6000 } : {}),
      ...(noReturnAt === undefined || noReturnAt === spareAt
        ? {}
        : {
            noReturn: [{ fromMm: (top + noReturnAt) * 1000, toMm: (top + noReturnAt + 1) * 1000 }] as never,
          }),
      bags: [...made.bags, ...spare],
      drilledMm: (top + 6) * 1000,
    };
  });

test('the bags shown are the bags counted: their number, and the last of them, always agree', () => {
  fc.assert(
    fc.property(state, (made) => {
      const { row } = rodCheck(sampling(), made);
      const filled = row.filter(({ kind }) => kind !== 'no sample');
      for (const bags of [row, filled]) {
        const digits = bags.at(-1)?.number.slice(-3) ?? '';
        expect(rodCheck(sampling(), made, { count: bags.length, digits }).agrees).toBe(true);
      }
      for (const bag of made.bags.filter(({ byHand }) => byHand === true))
        expect(row.map(({ number }) => number)).toContain(bag.number);
    }),
    { numRuns: runs(10_000, 150) },
  );
});
