import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Bag } from '../../../src/hole/bags.ts';
import { wayWords } from '../../../src/sampling/rod/effect.ts';
import type { OtherHole, RodSeen } from '../../../src/sampling/rod/mismatch.ts';
import { rodCheck, type Way } from '../../../src/sampling/rod/rod-check.ts';
import { issue } from '../../../src/sampling/stream/issue.ts';
import type { StreamState } from '../../../src/sampling/stream/stream.ts';
import { runs } from '../../support/long-run.ts';
import { atCollar, primary, sampling, withSlots } from '../build.ts';

const SAMPLINGS = [
  sampling(),
  withSlots([
    { every: 10, at: 0, kind: 'standard' },
    { every: 10, at: 3, kind: 'field duplicate' },
    { every: 10, at: 7, oneOf: ['blank', 'standard'], usually: 'blank' },
  ]),
  withSlots([]),
  sampling({ sampled: { rank: 'composite', lengthM: 2 } }),
];

const OTHERS: readonly OtherHole[] = [
  { hole: 'ZQRC001', bagRuns: [{ ...atCollar('ZQ000401', 'ZQ000460').bagRuns[0] }] as never, bags: [] },
];

/** A hole as a rig leaves it: rods done and read or not, spares and bags by hand in them or in the next one, metres without return. */
const holes = fc.record({
  project: fc.constantFrom(...SAMPLINGS),
  first: fc.integer({ min: 101, max: 180 }),
  rods: fc.nat(3),
  isRead: fc.boolean(),
  spares: fc.array(fc.nat(5), { maxLength: 2 }),
  byHand: fc.option(fc.nat(5)),
  handControl: fc.boolean(),
  noReturn: fc.array(fc.nat(5), { maxLength: 2 }),
});
type Made = typeof holes extends fc.Arbitrary<infer Value> ? Value : never;

const bag = (serial: number) => `ZQ${String(serial).padStart(6, '0')}`;

function stateOf({ project, first, rods, isRead, spares, byHand, handControl, noReturn }: Made): StreamState {
  let state: StreamState = atCollar(bag(first), 'ZQ000320');
  for (let rod = 1; rod <= rods; rod++) {
    const drilled = { ...state, drilledMm: rod * 6000 };
    state = {
      ...drilled,
      bags: [...drilled.bags, ...issue(project, drilled).map((each) => ({ ...each, rod: `r${rod}` }))],
    };
  }
  const top = rods * 6;
  const torn = issue(project, { ...state, drilledMm: (rods + 1) * 6000 }).filter(
    (each) => each.kind === 'primary',
  );
  const spared = [...new Set(spares)].flatMap((index, order): readonly Bag[] => {
    const old = torn[index];
    if (old === undefined) return [];
    return [
      { ...old, kind: 'spoiled', byHand: true, reason: 'torn' },
      { ...old, number: bag(320 - order), byHand: true, reason: 'in its place' },
    ];
  });
  const hand =
    byHand === null || spares.length > 0 || project.lengthMm > 1000
      ? []
      : [{ ...primary(bag(310), top + byHand, top + byHand + 1), byHand: true as const }];
  const control = handControl ? [{ number: bag(305), kind: 'blank' as const, byHand: true as const }] : [];
  return {
    ...state,
    bags: [...state.bags, ...spared, ...hand, ...control],
    drilledMm: (rods + 1) * 6000,
    ...(isRead ? { readMm: rods * 6000 } : {}),
    noReturn: noReturn.map((metre) => primary('', top + metre, top + metre + 1)) as never,
  };
}

/** What may be read at the end of a row: near what is expected, of another bundle or hole, in other order, of no one. */
const readings = fc.record({
  off: fc.oneof(fc.integer({ min: -4, max: 4 }), fc.constantFrom(-20, 23, 61, 220, 1500, 31)),
  count: fc.option(fc.integer({ min: 2, max: 10 })),
  foreign: fc.constantFrom(false, false, false, true),
  transposed: fc.constantFrom(false, false, false, true),
  double: fc.option(fc.boolean()),
  afterBreak: fc.boolean(),
  wrongDepth: fc.constantFrom(0, 0, 0, -1000, 1000),
});

function seenIn(
  expected: readonly Bag[],
  depthMm: number,
  read: typeof readings extends fc.Arbitrary<infer Value> ? Value : never,
): RodSeen {
  const last = Number(expected.at(-1)?.number.slice(2) ?? 130) + read.off;
  const digits = bag(Math.max(1, last)).slice(-3);
  const turned = `${digits[0]}${digits[2]}${digits[1]}`;
  return {
    digits: read.foreign ? 'AB4711' : read.transposed ? turned : digits,
    ...(read.count === null ? {} : { count: read.count }),
    ...(read.double === null ? {} : { double: read.double }),
    depthByRodsMm: depthMm + read.wrongDepth,
    afterBreak: read.afterBreak,
  };
}

/** What the record holds once a way is taken, worked out from its parts and not from its words. */
function recordAfter({ bags }: StreamState, { fix }: Way): string {
  const amended = new Map((fix.amend ?? []).map((each) => [each.number, each.bag]));
  const held = [...bags.map((each) => amended.get(each.number) ?? each), ...fix.issue]
    .map(({ number, kind, fromMm, toMm, of }) => JSON.stringify([number, kind, fromMm, toMm, of]))
    .sort();
  const issued = new Set(fix.issue.map(({ number }) => number));
  const later = (fix.choices ?? [])
    .filter(({ number }) => !issued.has(number))
    .map(({ number, kind }) => [number, kind]);
  const waiting = (fix.putOff ?? []).map(({ number, kind }) => [number, kind]);
  const unsampled = (fix.unsampled ?? []).map(({ fromMm, toMm }) => [fromMm, toMm]);
  return JSON.stringify([held, later, waiting, unsampled, fix.depthMm]);
}

const doing = (state: StreamState, way: Way): string => `${recordAfter(state, way)} ${way.deed ?? ''}`;

test('whatever is read of whatever hole: no two ways to fix it read the same, and none is offered twice', () => {
  const kinds = new Set<string>();
  fc.assert(
    fc.property(holes, readings, (made, read) => {
      const state = stateOf(made);
      const expected = issue(made.project, state);
      const check = rodCheck(made.project, state, seenIn(expected, state.drilledMm, read), OTHERS);
      for (const { code } of check.named) kinds.add(code);
      const ways = check.named.flatMap((each) => each.ways);
      const words = ways.map(wayWords);
      expect(words.filter((each, index) => words.indexOf(each) !== index)).toEqual([]);
      expect(new Set(ways.map((way) => doing(state, way))).size).toBe(ways.length);
      const asExpected = recordAfter(state, { at: '', effect: '', fix: { issue: expected } });
      for (const way of ways)
        expect([way.effect === '', way.effect]).toEqual([recordAfter(state, way) === asExpected, way.effect]);
    }),
    { numRuns: runs(3000, 250) },
  );
  expect(kinds.size).toBeGreaterThan(10);
});

test('whatever spares, bags by hand and metres without return there are: the count of the row shown is taken as true', () => {
  fc.assert(
    fc.property(holes, (made) => {
      const state = stateOf(made);
      const { row } = rodCheck(made.project, state);
      const filled = row.filter(({ kind }) => kind !== 'no sample');
      for (const { length } of [row, filled]) {
        const check = rodCheck(made.project, state, { count: length });
        expect([length, check.agrees, check.row.length]).toEqual([length, true, row.length]);
      }
      const beside = state.bags.filter((each) => each.byHand === true && each.kind !== 'spoiled');
      const shown = row.map(({ number }) => number);
      expect(beside.map(({ number }) => number).filter((number) => !shown.includes(number))).toEqual([]);
    }),
    { numRuns: runs(10_000, 500) },
  );
});

/** The ways to fix what was read in a rod, the likeliest first. */
function waysAt(state: StreamState, seen: RodSeen): readonly string[] {
  const check = rodCheck(sampling(), state, seen);
  return check.named.flatMap(({ name, ways }) => ways.map((way) => `${name}: ${wayWords(way)}`));
}

/** A hole whose second rod has the standard 200 among its metres. */
function withStandard(): StreamState {
  const drilled = { ...atCollar('ZQ000190'), drilledMm: 6000 };
  const bags = issue(sampling(), drilled).map((each) => ({ ...each, rod: 'r1' }));
  return { ...drilled, bags, drilledMm: 12_000 };
}

describe('what a way says that it makes of the numbers', () => {
  test('a standard forgotten: chips under its number, or its calico empty', () => {
    const ways = waysAt(withStandard(), { count: 6 });
    expect(ways.filter((each) => each.startsWith('a control forgotten'))).toMatchInlineSnapshot(`
      [
        "a control forgotten: ZQ000200–201 hold 10–12; the standard goes to ZQ000202",
        "a control forgotten: no number changes; ZQ000200 is empty, put its standard in now",
      ]
    `);
  });

  test('a rod of five: which metre has no sample, and where the others are', () => {
    expect(
      waysAt(withStandard(), { digits: '201', count: 6, controls: 1 }).slice(0, 2),
    ).toMatchInlineSnapshot(`
      [
        "too few bags: 6–7 has no sample; ZQ000196–199 hold 7–11; ZQ000201 holds 11–12; ZQ000202 stays for the next rod",
        "too few bags: 7–8 has no sample; ZQ000197–199 hold 8–11; ZQ000201 holds 11–12; ZQ000202 stays for the next rod",
      ]
    `);
  });

  test('a number gone back to, the number of a calico misread: no number changes, and what to write where', () => {
    const ways = waysAt(withStandard(), { digits: '192', count: 7 });
    expect(ways).toMatchInlineSnapshot(`
      [
        "a wrong restart: no number changes; write the numbers of this rod on its calicos, in their order",
        "more than one thing: no number changes; put each bag under its metre",
        "a bundle that is labelled for no hole yet: ZQ001192 is spoiled; write this hole’s numbers on the calicos",
      ]
    `);
  });
});
