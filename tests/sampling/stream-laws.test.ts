import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Sampling } from '../../src/sampling/sampling.ts';
import { CONTROL_KINDS } from '../../src/sampling/settings.ts';
import { issue } from '../../src/sampling/stream/issue.ts';
import { type StreamState, stream } from '../../src/sampling/stream/stream.ts';
import { atCollar, NOON, withSlots } from './build.ts';

/** A scheme of one slot of each kind that never meet, and a place on its numbers to start from. */
const schemes = fc
  .record({
    every: fc.integer({ min: 8, max: 60 }),
    shift: fc.nat(59),
    first: fc.integer({ min: 1, max: 3000 }),
  })
  .map(({ every, shift, first }) => ({
    first,
    sampling: withSlots([
      { every, at: shift % every, kind: 'standard' },
      { every, at: (shift + Math.floor(every / 3)) % every, kind: 'blank' },
      { every, at: (shift + Math.floor((2 * every) / 3)) % every, kind: 'field duplicate' },
    ]),
  }));

/** Something that happens at the splitter. */
type Happening =
  | { readonly rod: number }
  | { readonly undo: true }
  | { readonly amend: number }
  | { readonly later: number }
  | { readonly spoil: number };

const happenings = fc.array(
  fc.oneof(
    { weight: 5, arbitrary: fc.record({ rod: fc.integer({ min: 1, max: 9 }) }) },
    { weight: 2, arbitrary: fc.constant({ undo: true } as const) },
    { weight: 1, arbitrary: fc.record({ amend: fc.integer({ min: -2, max: 2 }) }) },
    { weight: 1, arbitrary: fc.record({ later: fc.nat(30) }) },
    { weight: 1, arbitrary: fc.record({ spoil: fc.nat(30) }) },
  ),
  { maxLength: 40 },
);

function drill(sampling: Sampling, state: StreamState, metres: number): StreamState {
  const drilled = { ...state, drilledMm: state.drilledMm + metres * 1000 };
  return { ...drilled, bags: [...state.bags, ...issue(sampling, drilled)] };
}

/** The records that a series of happenings leaves, the latest last; undo takes the latest back. */
function play(sampling: Sampling, start: StreamState, all: readonly Happening[]): StreamState {
  const records = [start];
  for (const each of all) {
    const now = records.at(-1) ?? start;
    if ('undo' in each) {
      if (records.length > 1) records.pop();
    } else records.push(after(sampling, now, each));
  }
  return records.at(-1) ?? start;
}

function after(sampling: Sampling, now: StreamState, each: Exclude<Happening, { undo: true }>): StreamState {
  if ('rod' in each) return drill(sampling, now, each.rod);
  if ('amend' in each) return { ...now, drilledMm: Math.max(0, now.drilledMm + each.amend * 1000) };
  const ahead = [...stream(sampling, now)];
  if ('spoil' in each) {
    const torn = ahead[each.spoil];
    if (torn === undefined) return now;
    return { ...now, bags: [...now.bags, { number: torn.number, kind: 'spoiled', reason: 'torn' }] };
  }
  const control = ahead.slice(each.later).find((one) => one.kind !== 'primary');
  if (control === undefined) return now;
  const { number, kind } = control;
  return { ...now, putOffs: [...now.putOffs, { number, kind, reason: 'no sachets here', at: NOON }] };
}

const start = (first: number) =>
  atCollar(`ZQ${String(first).padStart(6, '0')}`, `ZQ${String(first + 900).padStart(6, '0')}`);

test('in any order of rods, undoing, amended depths, torn bags and controls put off, no number is used twice', () => {
  fc.assert(
    fc.property(schemes, happenings, ({ first, sampling }, all) => {
      const numbers = play(sampling, start(first), all).bags.map((bag) => bag.number);
      expect(new Set(numbers).size).toBe(numbers.length);
    }),
  );
});

test('and the numbers of filled bags rise with depth', () => {
  fc.assert(
    fc.property(schemes, happenings, ({ first, sampling }, all) => {
      const filled = play(sampling, start(first), all).bags.filter((bag) => bag.kind !== 'spoiled');
      expect(filled.map((bag) => bag.number)).toEqual(filled.map((bag) => bag.number).sort());
      const tops = filled.flatMap((bag) => (bag.kind === 'primary' ? [bag.fromMm ?? -1] : []));
      expect(tops).toEqual([...tops].sort((a, b) => a - b));
    }),
  );
});

test('and every metre down to the deepest rod is in exactly one primary bag', () => {
  fc.assert(
    fc.property(schemes, happenings, ({ first, sampling }, all) => {
      const { bags } = play(sampling, start(first), all);
      const primaries = bags.filter((bag) => bag.kind === 'primary');
      expect(primaries.map((bag) => bag.fromMm)).toEqual(primaries.map((_, index) => index * 1000));
      expect(primaries.every((bag) => (bag.toMm ?? 0) - (bag.fromMm ?? 0) === 1000)).toBe(true);
    }),
  );
});

test('and no bag is put under a number kept for a control put off', () => {
  fc.assert(
    fc.property(schemes, happenings, ({ first, sampling }, all) => {
      const state = play(sampling, start(first), all);
      const issued = new Set(state.bags.filter((bag) => bag.kind !== 'spoiled').map((bag) => bag.number));
      expect(state.putOffs.filter((each) => issued.has(each.number))).toEqual([]);
    }),
  );
});

test('every field duplicate holds the metre of the primary that it names', () => {
  fc.assert(
    fc.property(schemes, happenings, ({ first, sampling }, all) => {
      const { bags } = play(sampling, start(first), all);
      for (const bag of bags.filter((each) => each.kind === 'field duplicate')) {
        const twin = bags.find((each) => each.number === bag.of);
        expect([twin?.kind, twin?.fromMm, twin?.toMm]).toEqual(['primary', bag.fromMm, bag.toMm]);
      }
    }),
  );
});

test('every sampled metre is in exactly one composite too, where a bag holds several metres', () => {
  fc.assert(
    fc.property(schemes, happenings, fc.integer({ min: 2, max: 6 }), ({ first, sampling }, all, lengthM) => {
      const composites: Sampling = { ...sampling, rank: 'composite', lengthMm: lengthM * 1000 };
      const { bags } = play(composites, start(first), all);
      const primaries = bags.filter((bag) => bag.kind === 'primary');
      expect(primaries.map((bag) => [bag.rank, bag.fromMm, bag.toMm])).toEqual(
        primaries.map((_, index) => ['composite', index * lengthM * 1000, (index + 1) * lengthM * 1000]),
      );
    }),
  );
});

test('in every 200 samples the controls of each kind are within one of the scheme, those that someone forced left out', () => {
  fc.assert(
    fc.property(
      schemes,
      fc.nat(300),
      fc.uniqueArray(fc.nat(550), { maxLength: 12 }),
      ({ first, sampling }, skip, forced) => {
        const numbers = [...stream(sampling, start(first))].filter((each) => each.kind === 'primary');
        const choices = forced.map((place) => ({
          number: numbers[place]?.number ?? '',
          kind: 'blank' as const,
        }));
        const isForced = new Set(choices.map((each) => each.number));
        const bags = drill(sampling, { ...start(first), choices }, 560).bags;
        // A number taken for a forced control is one that the scheme meant for a sample.
        const places = bags.flatMap((bag, index) =>
          bag.kind === 'primary' || isForced.has(bag.number) ? [index] : [],
        );
        const window = bags.slice(places[skip], places[skip + 200]);
        const every = sampling.slots[0]?.every ?? 0;
        for (const kind of CONTROL_KINDS) {
          const wanted = 200 / (every - 3);
          const got = window.filter((bag) => bag.kind === kind && !isForced.has(bag.number)).length;
          expect(Math.abs(got - wanted)).toBeLessThanOrEqual(1);
        }
      },
    ),
  );
});
