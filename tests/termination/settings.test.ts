import { describe, expect, test } from 'vitest';
import { OROGENIC_GOLD_RULES } from '../../src/termination/rules/starter/orogenic-gold.ts';
import { overrideFor, rulesFor, terminationSettings } from '../../src/termination/settings.ts';
import { rule } from './build.ts';

const A = rule({ maximumReached: { maximumM: 100 } }, { name: 'a' });
const B = rule({ maximumReached: { maximumM: 120 } }, { name: 'b' });
const DEEPER = rule({ maximumReached: { maximumM: 180 } }, { name: 'a' });
const OWN = rule({ held: {} }, { name: 'own' });
const SETTLED = { hole: 'ZQRC004', by: 'ABC', because: 'deeper target' };

describe('the rules in force for a hole', () => {
  test('are the project’s where nothing was settled for it', () => {
    expect(rulesFor({ rules: [A, B] }, ['ZQRC001'])).toEqual([A, B]);
    expect(rulesFor({ rules: [A, B], holes: [{ ...SETTLED, rules: [OWN] }] }, ['ZQRC001'])).toEqual([A, B]);
  });

  test('are its own in the place of those of the same name, and beside the others', () => {
    const settings = { rules: [A, B], holes: [{ ...SETTLED, rules: [OWN, DEEPER] }] };
    expect(rulesFor(settings, ['ZQRC004'])).toEqual([DEEPER, B, OWN]);
  });

  test('leave out those that it does without', () => {
    expect(rulesFor({ rules: [A, B], holes: [{ ...SETTLED, without: ['a'] }] }, ['ZQRC004'])).toEqual([B]);
  });

  test('are found by any of its names, with who settled them and why', () => {
    const settings = { rules: [A], holes: [SETTLED] };
    expect(overrideFor(settings, ['P12', 'ZQRC004'])).toMatchObject({ by: 'ABC', because: 'deeper target' });
    expect(overrideFor(settings, ['P12'])).toBeUndefined();
  });
});

describe('the settings as they are in a file', () => {
  test('read the starter rules as they are', () => {
    const settings = { rules: OROGENIC_GOLD_RULES };
    expect(terminationSettings.parse(JSON.parse(JSON.stringify(settings)))).toEqual(settings);
  });

  test.each([
    ['a verdict that is none', { ...A, verdict: 'stop' }],
    ['a condition that is none', { ...A, when: { deepEnough: {} } }],
    ['two conditions in one', { ...A, when: { held: {}, rodFinished: {} } }],
    ['an empty all', { ...A, when: { all: [] } }],
    ['a length of nothing', { ...A, when: { wetInARow: { forM: 0 } } }],
    ['less than a millimetre', { ...A, when: { wetInARow: { forM: 1.0005 } } }],
    ['a rule without words', { ...A, words: '' }],
  ])('refuse %s', (_what, bad) => {
    expect(terminationSettings.safeParse({ rules: [bad] }).success).toBe(false);
  });
});
