import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gapsIn, headsOf, logged, loggedWords, nextInterval } from '../../src/standing/heads.ts';
import { depthOfRod, nextRod, rodEndsAt, rodOfDepth } from '../../src/standing/rods.ts';
import { holeWith, rod, row } from './support/hole.ts';

describe('the two heads', () => {
  it('of a hole with nothing in it stand where logging starts', () => {
    expect(headsOf(holeWith({}, { logFromMm: 48_000 }))).toMatchObject({
      drilledMm: 48_000,
      loggedMm: 48_000,
      behindMm: 0,
      lastRod: undefined,
    });
  });

  it('are the deepest rod and the foot of unbroken rows: a row below a gap moves nothing', () => {
    const hole = holeWith({ rods: [rod(1, 6), rod(2, 12)], rows: [row(0, 1), row(1, 2), row(3, 4)] });
    expect(headsOf(hole)).toMatchObject({ drilledMm: 12_000, loggedMm: 2000, behindMm: 9000 });
    expect(logged(hole)).toEqual({ toMm: 4000, missingMm: 1000 });
    expect(loggedWords(hole)).toBe('4 m, 1 m missing');
  });

  it('take the deepest rod, whichever was put last', () => {
    expect(headsOf(holeWith({ rods: [rod(2, 12), rod(1, 6)] })).drilledMm).toBe(12_000);
  });

  it('lie level where the log is past the last rod: nothing is behind', () => {
    expect(headsOf(holeWith({ rods: [rod(1, 6)], rows: [row(0, 8)] })).behindMm).toBe(0);
  });

  it('do not hang on the order in which rows were logged', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7]), (tops) => {
        const hole = holeWith({ rows: tops.map((top) => row(top, top + 1)) });
        const sorted = [...tops].sort((a, b) => a - b);
        const unbroken = sorted.findIndex((top, index) => top !== index);
        expect(headsOf(hole).loggedMm).toBe((unbroken < 0 ? sorted.length : unbroken) * 1000);
      }),
    );
  });
});

describe('the interval to log next', () => {
  it('is the usual length from the logged head, cut short by a row below', () => {
    expect(nextInterval(holeWith({ rows: [row(0, 2)] }))).toEqual({ fromMm: 2000, toMm: 3000 });
    expect(nextInterval(holeWith({ rows: [row(0, 2), { ...row(2, 3), fromMm: 2400 }] }))).toEqual({
      fromMm: 2000,
      toMm: 2400,
    });
  });
});

describe('gaps', () => {
  it('are what no row covers, down to a depth', () => {
    expect(gapsIn(holeWith({ rows: [row(1, 2), row(4, 5)] }), 6000)).toEqual([
      { fromMm: 0, toMm: 1000 },
      { fromMm: 2000, toMm: 4000 },
      { fromMm: 5000, toMm: 6000 },
    ]);
    expect(gapsIn(holeWith({ rows: [row(0, 9)] }), 6000)).toEqual([]);
  });

  it('and rows together are as long as the hole', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 0, max: 19 })), (tops) => {
        const gaps = gapsIn(holeWith({ rows: tops.map((top) => row(top, top + 1)) }), 20_000);
        expect(gaps.reduce((sum, gap) => sum + gap.toMm - gap.fromMm, tops.length * 1000)).toBe(20_000);
      }),
    );
  });
});

describe('rods', () => {
  it('end at their count times their length and the first-rod offset', () => {
    const hole = holeWith({}, { firstRodOffsetMm: -600 });
    expect([1, 2, 10].map((count) => depthOfRod(hole, count))).toEqual([5400, 11_400, 59_400]);
    expect([1000, 5400, 5401].map((mm) => rodOfDepth(hole, mm))).toEqual([1, 1, 2]);
    expect([5400, 6000].map((mm) => rodEndsAt(hole, mm))).toEqual([true, false]);
  });

  it('the next one is behind the deepest done, and past a depth that was given by hand', () => {
    expect(nextRod(holeWith({}))).toEqual({ rod: 1, depthMm: 6000 });
    expect(nextRod(holeWith({ rods: [rod(1, 6), rod(2, 12)] }))).toEqual({ rod: 3, depthMm: 18_000 });
    expect(nextRod(holeWith({ rods: [rod(1, 6), rod(2, 13)] }))).toEqual({ rod: 3, depthMm: 18_000 });
  });
});
