import { describe, expect, test } from 'vitest';
import type { OtherHole, RodSeen } from '../../../src/sampling/rod/mismatch.ts';
import { rodCheck } from '../../../src/sampling/rod/rod-check.ts';
import { issue } from '../../../src/sampling/stream/issue.ts';
import type { StreamState } from '../../../src/sampling/stream/stream.ts';
import { atCollar, inShort, sampling, withSlots } from '../build.ts';

/** A hole with one rod issued (`first` and five more) and a second one drilled. */
function secondRod(first = 'ZQ000174'): StreamState {
  const drilled = { ...atCollar(first, 'ZQ000320'), drilledMm: 6000 };
  const bags = issue(sampling(), drilled).map((bag) => ({ ...bag, rod: 'r1' }));
  return { ...drilled, bags, drilledMm: 12_000 };
}

/** The project without controls, so that numbers and metres run level. */
const plain = withSlots([]);

function named(seen: RodSeen, state = secondRod(), others: readonly OtherHole[] = []) {
  return rodCheck(sampling(), state, seen, others);
}

describe('a rod that fits', () => {
  test('one key is enough: nothing read agrees', () => {
    expect(named({})).toMatchObject({ agrees: true, named: [] });
  });

  test.each(['5', '85', '185', '000185', 'ZQ000185'])('the last digits %s are enough', (digits) => {
    expect(named({ digits, count: 6 }).agrees).toBe(true);
  });

  test('a rod that completes no sample agrees with the calico that was the last before it', () => {
    const standing = { ...secondRod(), drilledMm: 6500 };
    expect(named({ digits: '179', count: 0 }, standing)).toMatchObject({ agrees: true, expected: [] });
    expect(named({ digits: '180', count: 1 }, standing).agrees).toBe(false);
    expect(named({ digits: '181' }, standing).agrees).toBe(false);
  });

  test('a closing sachet that is not put in yet is left to the next rod', () => {
    const closing = { ...atCollar('ZQ000154'), drilledMm: 6000 };
    expect(inShort(named({ digits: '160', count: 7 }, closing).expected).at(-1)).toBe('160 standard');
    expect(inShort(named({ digits: '159', count: 6 }, closing).expected).at(-1)).toBe('159 primary 5–6');
  });

  test('the expected bags are shown before anything is typed', () => {
    expect(inShort(named({}).expected).at(-1)).toBe('185 primary 11–12');
  });
});

describe('a rod that does not', () => {
  test.each<[string, RodSeen, string]>([
    ['five bags', { digits: '184', count: 5, double: false }, 'bags-too-few'],
    ['seven bags', { digits: '186', count: 7, controls: 0 }, 'bags-too-many'],
    ['two metres in one bag', { digits: '184', count: 5, double: true }, 'two-metres-in-one-bag'],
    ['a number skipped', { digits: '186', count: 6, first: '180' }, 'skipped'],
    ['a number used twice', { digits: '184', count: 6, first: '180', lastTwo: ['183', '184'] }, 'used-twice'],
    ['the calico before the last one read', { digits: '184', lastTwo: ['184', '185'] }, 'last-but-one-read'],
    ['the last calico of the rod above read again', { digits: '179', count: 6 }, 'rod-above-read'],
    ['a count that is off', { digits: '185', count: 4 }, 'count-off'],
    [
      'the last two laid the wrong way round',
      { digits: '184', lastTwo: ['185', '184'] },
      'closing-bags-swapped',
    ],
    ['digits transposed', { digits: '158', count: 6 }, 'transposed-digits'],
    ['digits transposed, of which one was read', { digits: '085', count: 6 }, 'transposed-digits'],
    ['the stream one ahead', { digits: '186', count: 6, first: '181' }, 'one-ahead'],
    ['the stream one behind', { digits: '184', count: 6, first: '179' }, 'one-behind'],
    ['a wrong restart', { digits: '216', count: 6, afterBreak: true }, 'wrong-restart'],
    ['the depth mark a metre out', { digits: '184', count: 5, depthByRodsMm: 11_000 }, 'depth-mark-out'],
    ['a foreign bag', { digits: 'AB4711', count: 6 }, 'foreign'],
    ['a rod that no single slip explains', { digits: '179', count: 3 }, 'several'],
  ])('%s is named', (_, seen, code) => {
    const check = named(seen);
    expect(check.agrees).toBe(false);
    expect(check.named[0]?.code).toBe(code);
  });

  test('a number used again behind the duplicate of its metre is a number used twice', () => {
    const state = { ...atCollar('ZQ000168'), drilledMm: 6000 };
    expect(inShort(issue(sampling(), state)).slice(4)).toEqual([
      '172 primary 4–5',
      '173 field duplicate 4–5',
      '174 primary 5–6',
    ]);
    const check = named({ digits: '172', count: 7 }, state);
    expect(check.named[0]).toMatchObject({ code: 'used-twice', ways: [{ at: 'ZQ000172' }] });
    expect(inShort(check.named[0]?.ways[0]?.fix.issue ?? []).slice(4)).toEqual([
      '172 primary 4–5',
      '174 primary 5–6',
      '173 field duplicate 4–5',
    ]);
  });
});

describe('what comes with a name', () => {
  test('two numbers passed over in this rod are never nearly sure while a rod above may have passed them over', () => {
    const check = rodCheck(plain, secondRod(), { digits: '187', count: 6 });
    expect(check.named.slice(0, 2).map((each) => each.code)).toEqual(['skipped', 'one-ahead']);
    expect(check.named[0]?.share).toBeLessThan(0.9);
    expect(check.look).toBe('first');
    const after = rodCheck(plain, secondRod(), { digits: '187', count: 6, first: '182' });
    expect(after.named[0]).toMatchObject({ code: 'one-ahead', name: 'the stream is ahead' });
    // They may have been passed over before the first metre of this rod.
    expect(after.named[1]?.code).toBe('skipped');
    // A rod that was read and agreed can't have passed anything over.
    const read = rodCheck(plain, { ...secondRod(), readMm: 6000 }, { digits: '187', count: 6 });
    expect(read.named[0]?.share).toBeGreaterThan(0.9);
  });

  test('two numbers passed over where one rod ends and the next begins are mended in both', () => {
    const [ahead] = rodCheck(plain, secondRod(), { digits: '187', count: 6, first: '182' }).named;
    const last = ahead?.ways.find((way) => way.at === 'ZQ000179, ZQ000180');
    expect(inShort(last?.fix.issue ?? [])).toEqual([
      '180 spoiled',
      '181 primary 5–6',
      '182 primary 6–7',
      '183 primary 7–8',
      '184 primary 8–9',
      '185 primary 9–10',
      '186 primary 10–11',
      '187 primary 11–12',
    ]);
    expect(last?.fix.amend?.map(({ bag }) => inShort([bag])[0])).toEqual(['179 spoiled']);
  });

  test.each<RodSeen>([
    { digits: '6', count: 5 },
    { digits: '6', count: 7 },
    { digits: '8', count: 5 },
  ])('one digit that fits the numbers of this hole speaks for no bundle of others: %j', (seen) => {
    const first = { ...atCollar('ZQ000001', 'ZQ000060'), drilledMm: 6000 };
    expect(rodCheck(plain, first, seen).named[0]?.code).toMatch(/^(several|count-off)$/);
  });

  test('one more look is asked for where it can part two mismatches, and settles it', () => {
    const first = named({ digits: '184', count: 5 });
    expect(first.named.map((each) => each.code)).toEqual([
      'bags-too-few',
      'two-metres-in-one-bag',
      'depth-mark-out',
      'several',
      'another-bundle',
    ]);
    expect(first.look).toBe('double');
    expect(named({ digits: '184', count: 5, double: true }).named.map((each) => each.code)).toEqual([
      'two-metres-in-one-bag',
      'several',
      'another-bundle',
    ]);
  });

  test('every way to mend it is offered with its place, and the shares of the names make one', () => {
    const check = named({ digits: '184', count: 5 });
    expect(check.named[0]?.ways.map((way) => way.at)).toEqual([
      '6–7',
      '7–8',
      '8–9',
      '9–10',
      '10–11',
      '11–12',
    ]);
    expect(check.named.reduce((sum, each) => sum + each.share, 0)).toBeCloseTo(1, 9);
  });

  test('the mending of a missed metre issues the bags that lie there and says which metre has none', () => {
    const fix = named({ digits: '184', count: 5, double: false }).named[0]?.ways[2]?.fix;
    expect(inShort(fix?.issue ?? [])).toEqual([
      '180 primary 6–7',
      '181 primary 7–8',
      '182 primary 9–10',
      '183 primary 10–11',
      '184 primary 11–12',
    ]);
    expect(fix?.unsampled).toMatchObject([{ fromMm: 8000, toMm: 9000 }]);
  });

  test('no mending renumbers a bag that was issued before', () => {
    const state = secondRod();
    const issued = new Set(state.bags.map((bag) => bag.number));
    for (const seen of [
      { digits: '186', count: 6 },
      { digits: '184', count: 6 },
      { digits: '184', count: 5 },
    ]) {
      for (const { fix } of named(seen).named.flatMap((each) => each.ways)) {
        expect(fix.issue.filter((bag) => issued.has(bag.number))).toEqual([]);
        expect(
          (fix.amend ?? []).every(({ number, bag }) => number === bag.number && issued.has(number)),
        ).toBe(true);
      }
    }
  });
});
