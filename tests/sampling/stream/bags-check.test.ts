import { expect, test } from 'vitest';
import { type BaggedHole, checkBags } from '../../../src/sampling/stream/bags-check.ts';
import { issue } from '../../../src/sampling/stream/issue.ts';
import { atCollar, NOON, primary, sampling } from '../build.ts';

const state = { ...atCollar('ZQ000121', 'ZQ000200'), drilledMm: 30_000 };
const clean: BaggedHole = { ...state, hole: 'ZQRC004', bags: issue(sampling(), state) };
const codes = (...holes: readonly BaggedHole[]): readonly string[] =>
  checkBags(sampling(), holes).map((each) => each.code);

/** The clean hole with one bag put differently. */
function with1(number: string, changed: Partial<(typeof clean.bags)[number]>): BaggedHole {
  return { ...clean, bags: clean.bags.map((bag) => (bag.number === number ? { ...bag, ...changed } : bag)) };
}

test('bags as a rod issues them raise nothing', () => {
  expect(checkBags(sampling(), [clean])).toEqual([]);
});

test('a number on two bags is found across holes', () => {
  const twin = { ...clean, hole: 'ZQRC005', bags: [primary('ZQ000121', 0, 1)] };
  expect(codes(clean, twin)).toEqual(['number-used-twice', 'bag-run-overlap']);
});

test('a metre in two primaries of one rank is found, and ranks stand beside each other', () => {
  const again = primary('ZQ000199', 0, 1);
  expect(codes({ ...clean, bags: [...clean.bags, again] })).toEqual(['metre-bagged-twice']);
  expect(codes({ ...clean, bags: [...clean.bags, { ...again, rank: 'composite' }] })).toEqual([]);
});

test('a number kept for a control that holds a metre is found, unless someone chose it', () => {
  const asMetre = with1('ZQ000133', {
    kind: 'primary',
    fromMm: clean.bags[0]?.fromMm,
    toMm: clean.bags[0]?.toMm,
  });
  expect(codes(asMetre)).toContain('control-number-as-metre');
  const chosen = { ...asMetre, choices: [{ number: 'ZQ000133', kind: 'primary' as const }] };
  expect(codes(chosen)).not.toContain('control-number-as-metre');
});

test('a duplicate without its primary, or with another metre, is found', () => {
  expect(codes(with1('ZQ000133', { of: 'ZQ000777' }))).toEqual(['duplicate-without-primary']);
  expect(codes(with1('ZQ000133', { of: 'ZQ000130' }))).toEqual(['duplicate-not-its-twin']);
});

test("another hole's bag is found by its number", () => {
  expect(codes({ ...clean, bags: [...clean.bags, primary('ZQ000450', 30, 31)] })).toEqual([
    'bag-not-of-this-hole',
  ]);
});

test('a number of another form is found', () => {
  expect(codes({ ...clean, bags: [...clean.bags, primary('ZQ45', 30, 31)] })).toEqual([
    'bag-number-not-ours',
  ]);
});

test("a run outside its rig's block, and one that holds no numbers, are found", () => {
  const run = (first: string, last: string, rig: string) =>
    codes({ ...clean, bags: [], bagRuns: [{ first, last, rig, at: NOON }] });
  expect(run('ZQ009990', 'ZQ010010', 'Rig 1')).toEqual(['bag-run-outside']);
  expect(run('ZQ000010', 'ZQ000001', 'Rig 1')).toEqual(['bag-run-backwards']);
});
