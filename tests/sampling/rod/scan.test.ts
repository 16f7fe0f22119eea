import { expect, test } from 'vitest';
import { NEAR_SPLITTER } from '../../../src/sampling/rod/mismatch.ts';
import { type ScannedAt, scanCheck } from '../../../src/sampling/rod/scan.ts';
import { issue } from '../../../src/sampling/stream/issue.ts';
import { atCollar, NOON, sampling, spoiledBag } from '../build.ts';

/** Six metres bagged from 170: the fourth bag, 173, is the duplicate of 172. 190 is spoiled, 187 kept for a blank. */
const drilled = { ...atCollar('ZQ000170', 'ZQ000220'), bags: [spoiledBag('ZQ000190')], drilledMm: 6000 };
const state = { ...drilled, bags: [...drilled.bags, ...issue(sampling(), drilled)] };
const others = [
  { hole: 'ZQRC003', bags: [], bagRuns: [{ first: 'ZQ000300', last: 'ZQ000399', rig: 'Rig 1', at: NOON }] },
];
const scanned = (number: string, at?: ScannedAt) => scanCheck(sampling(), state, number, at, others);

test('a bag beside its own pile agrees, and says what the record has', () => {
  expect(scanned('ZQ000171', { depthMm: 1500 })).toEqual({
    number: 'ZQ000171',
    known: 'primary 1–2',
    agrees: true,
  });
});

test('a bag that comes next agrees under the first chute', () => {
  expect(scanned('ZQ000177', { depthMm: 6000, chute: 'first' })).toMatchObject({
    known: 'primary 6–7, coming',
    agrees: true,
  });
});

test.each<[string, string, ScannedAt | undefined, string]>([
  ['another form', 'QQ17', undefined, 'foreign'],
  ['a number labelled for no hole', 'ZQ000900', undefined, 'another-bundle'],
  ['a number of no block', 'ZQ020900', undefined, 'foreign'],
  ['a spoiled number', 'ZQ000190', undefined, 'spoiled-used'],
  ['a number of another hole', 'ZQ000310', undefined, 'last-holes-bags'],
  [
    'a primary on the second chute',
    'ZQ000172',
    { depthMm: 2500, chute: 'second' },
    'duplicate-and-primary-swapped',
  ],
  [
    'a duplicate on the first chute',
    'ZQ000173',
    { depthMm: 2500, chute: 'first' },
    'duplicate-and-primary-swapped',
  ],
  ['a bag beside the pile below', 'ZQ000171', { depthMm: 2500 }, 'one-behind'],
  ['a bag beside the pile above', 'ZQ000171', { depthMm: 500 }, 'one-ahead'],
  ['a bag far from its pile', 'ZQ000170', { depthMm: 4500 }, 'several'],
  ['a bag that was filled before', 'ZQ000175', { depthMm: 6000, chute: 'first' }, 'used-twice'],
  [
    'a number kept for a blank, under the chute',
    'ZQ000187',
    { depthMm: 6000, chute: 'first' },
    'control-forgotten',
  ],
])('%s is named', (_, number, at, code) => {
  expect(scanned(number, at)).toMatchObject({ agrees: false, named: { code } });
});

test('whatever takes hands near the splitter is said under the driller’s word only', () => {
  expect(scanned('ZQ000310').named?.ground).toContain(NEAR_SPLITTER);
});
