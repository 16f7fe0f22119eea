import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { instantMs, localTime, minutesBetween, stamp } from '../../src/quantity/stamp.ts';
import type { Document } from '../../src/record/document.ts';
import type { NewPlodLine } from '../../src/shift/plod-line.ts';
import { queryList } from '../../src/shift/query-list.ts';
import { runs } from '../support/long-run.ts';
import { at, claimed, doing, ended, hole, RULES, rod, STARTED } from './build.ts';

/** An honest shift: activities in turn, rods and shots on the way, and a plod that says the same. */
const honest = fc
  .array(
    fc.record({
      activity: fc.constantFrom('drilling', 'drilling', 'reaming', 'standby', 'breakdown'),
      minutes: fc.integer({ min: 40, max: 120 }),
      shot: fc.boolean(),
    }),
    { minLength: 3, maxLength: 8 },
  )
  .filter(
    (parts) =>
      parts.some(({ activity }) => activity === 'drilling') &&
      parts.some(({ activity }) => activity === 'standby'),
  )
  .map((parts) => {
    let minute = 0;
    let depth = 0;
    const lines: NewPlodLine[] = [];
    const rods: ReturnType<typeof rod>[] = [];
    const shots: { at: string; depthMm: number }[] = [];
    const said: [string, Parameters<typeof doing>[1][1]][] = [];
    const clock = (min: number): string => localTime(stamp(instantMs(at('06:00')) + min * 60_000, 480));
    for (const { activity, minutes, shot } of parts) {
      const drilling = activity === 'drilling';
      said.push([
        clock(minute),
        { activity, hole: 'ZQRC004', ...(activity === 'standby' ? { authorisedBy: 'Ada' } : {}) },
      ]);
      const top = depth;
      if (drilling) {
        depth += 6 * Math.floor(minutes / 20);
        for (let foot = top + 6; foot <= depth; foot += 6)
          rods.push(rod(clock(minute + Math.floor(((foot - top) / (depth - top)) * (minutes - 1))), foot));
      }
      const isShot = activity === 'reaming' && shot;
      if (isShot) shots.push({ at: at(clock(minute + 10)), depthMm: depth * 1000 });
      lines.push({
        activity,
        minutes,
        startsAt: at(clock(minute)),
        endsAt: at(clock(minute + minutes)),
        hole: 'ZQRC004',
        ...(drilling ? { fromMm: top * 1000, toMm: depth * 1000 } : {}),
        ...(isShot ? { shots: 1 } : {}),
      } as NewPlodLine);
      minute += minutes;
    }
    const shift = ended(doing(STARTED, ...said), clock(minute));
    return { shift, lines, holes: [hole('ZQRC004', { rods, shots })] };
  });
type Honest = typeof honest extends fc.Arbitrary<infer T> ? T : never;

const queries = (shift: Document, holes: readonly Document[], lines: readonly NewPlodLine[]) =>
  queryList(claimed(shift, ...lines), holes, RULES, at('20:00', 1));
const clocks = (line: NewPlodLine | undefined): string =>
  line?.startsAt === undefined || line.endsAt === undefined
    ? ''
    : `${localTime(line.startsAt)}–${localTime(line.endsAt)}`;

/** One known discrepancy: the sheet as it was falsified, and the code, the clock and the words it must be found by. */
interface Planted {
  readonly lines: readonly NewPlodLine[];
  readonly code: string;
  readonly at: string;
}

const PLANTS: Readonly<Record<string, (pair: Honest, pick: number) => Planted>> = {
  'standby moved to active': ({ lines }, pick) => {
    const standby = lines.filter((line) => line.activity === 'standby');
    const moved = standby[pick % standby.length];
    return {
      lines: lines.map((line) => (line === moved ? { ...line, activity: 'reaming' } : line)),
      code: 'plod-time-differs',
      at: clocks(moved),
    };
  },
  'metres over-claimed': ({ lines }) => {
    const last = lines.findLast((line) => line.toMm !== undefined);
    const over = lines.map((line) =>
      line === last && line.toMm !== undefined ? ({ ...line, toMm: line.toMm + 6000 } as NewPlodLine) : line,
    );
    return { lines: over, code: 'plod-metres-differ', at: clocks(last) };
  },
  'a shot too many': ({ lines }, pick) => {
    const wrong = lines[pick % lines.length];
    const more = lines.map((line) => (line === wrong ? { ...line, shots: (line.shots ?? 0) + 1 } : line));
    return { lines: more, code: 'plod-shots-differ', at: clocks(wrong) };
  },
  'a shift typed twice': ({ lines }) => ({
    lines: [...lines, ...lines],
    code: 'plod-times-overlap',
    at: clocks(lines[0]),
  }),
  'overlapping times': ({ lines }) => {
    const [first, second] = lines;
    if (first?.endsAt === undefined || second?.endsAt === undefined) throw new Error('three lines at least');
    const early = stamp(instantMs(first.endsAt) - 20 * 60_000, 480);
    const over = { ...second, startsAt: early, minutes: minutesBetween(early, second.endsAt) };
    return {
      lines: [first, over, ...lines.slice(2)],
      code: 'plod-times-overlap',
      at: `${localTime(early)}–${localTime(first.endsAt)}`,
    };
  },
  'the wrong hole': ({ lines }, pick) => {
    const wrong = lines[pick % lines.length];
    const moved = lines.map((line) => (line === wrong ? { ...line, hole: 'ZQRC005' } : line));
    return { lines: moved, code: 'plod-hole-differs', at: clocks(wrong) };
  },
};

describe('an honest plod', () => {
  test('raises no query, and its lines make the total to the cent', () => {
    fc.assert(
      fc.property(honest, ({ shift, lines, holes }) => {
        const { queries: found, ownBill, plodBill } = queries(shift, holes, lines);
        expect(found).toEqual([]);
        expect(plodBill).toEqual(ownBill);
        for (const bill of [ownBill, plodBill])
          expect(bill.lines.reduce((sum, line) => sum + line.cents, 0)).toBe(bill.total);
      }),
      { numRuns: runs(1000) },
    );
  });
});

describe('one discrepancy a shift is found and pointed at in time:', () => {
  test.each(Object.keys(PLANTS))('%s', (name) => {
    fc.assert(
      fc.property(honest, fc.nat(20), (pair, pick) => {
        const planted = PLANTS[name]?.(pair, pick);
        if (planted === undefined) throw new Error(name);
        const { queries: found, ownBill, plodBill } = queries(pair.shift, pair.holes, planted.lines);
        const hits = found.filter((query) => query.code === planted.code);
        expect(hits.length).toBeGreaterThan(0);
        const words = hits.map((query) => `${query.place.thing} ${query.problem}`).join(' | ');
        const [from = '', to = ''] = planted.at.split('–');
        expect(words).toContain(from);
        if (name !== 'a shift typed twice' && name !== 'the wrong hole') expect(words).toContain(to);
        for (const bill of [ownBill, plodBill])
          expect(bill.lines.reduce((sum, line) => sum + line.cents, 0)).toBe(bill.total);
      }),
      { numRuns: runs(1000) },
    );
  });

  test('several at once: the differences of the lines explain the net difference', () => {
    fc.assert(
      fc.property(
        honest,
        fc.subarray(Object.keys(PLANTS), { minLength: 2 }),
        fc.nat(20),
        (pair, names, pick) => {
          let { lines } = pair as { lines: readonly NewPlodLine[] };
          for (const name of names)
            lines = PLANTS[name]?.({ ...pair, lines: [...lines] }, pick).lines ?? lines;
          const { comparisons, ownBill, plodBill } = queries(pair.shift, pair.holes, lines);
          const money = comparisons.filter((each) => each.subject === 'money');
          expect(money.reduce((sum, each) => sum + each.difference, 0)).toBe(plodBill.total - ownBill.total);
        },
      ),
      { numRuns: runs(300) },
    );
  });
});
