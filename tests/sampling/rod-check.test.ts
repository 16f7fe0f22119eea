import { describe, expect, test } from 'vitest';
import { issue } from '../../src/sampling/issue.ts';
import type { OtherHole, RodSeen } from '../../src/sampling/mismatch.ts';
import { rodCheck } from '../../src/sampling/rod-check.ts';
import type { StreamState } from '../../src/sampling/stream.ts';
import { atCollar, inShort, sampling } from './build.ts';

/** A hole with one rod issued (`first` and five more) and a second one drilled. */
function secondRod(first = 'ZQ000174'): StreamState {
  const drilled = { ...atCollar(first, 'ZQ000320'), drilledMm: 6000 };
  const bags = issue(sampling(), drilled).map((bag) => ({ ...bag, rod: 'r1' }));
  return { ...drilled, bags, drilledMm: 12_000 };
}

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
    ['a number used twice', { digits: '184', count: 6, first: '180' }, 'used-twice'],
    ['digits transposed', { digits: '158', count: 6 }, 'transposed-digits'],
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
});
