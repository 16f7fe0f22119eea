import { describe, expect, test } from 'vitest';
import {
  campSheet,
  checkReceipt,
  checkTransfers,
  laboratorySheet,
  makeUpSacks,
  sackRange,
} from '../../src/sampling/dispatch.ts';
import { type Dispatch, dispatch as dispatchNoun } from '../../src/sampling/dispatch-noun.ts';
import { issue } from '../../src/sampling/issue.ts';
import { atCollar, NOON, sampling, voidBag } from './build.ts';

const issued = issue(sampling(), { ...atCollar('ZQ000131'), drilledMm: 11_000 });
const numbers = issued.map((bag) => bag.number);
const send = { name: 'D1', numbers, issued, sentBefore: [] };
const codes = (changed: Partial<typeof send> & { sentBefore?: readonly string[] }): readonly string[] => {
  const made = makeUpSacks(sampling(), { ...send, ...changed });
  return made.ok ? [] : made.findings.map((each) => each.code);
};

/** A dispatch that goes as it should. */
function dispatched(): Dispatch {
  const made = makeUpSacks(sampling(), send);
  if (!made.ok) throw new Error('the sacks were refused');
  return { name: 'D1', laboratory: 'Assay House', sacks: [...made.value], transfers: [] };
}

describe('making up a dispatch', () => {
  test('sacks hold five calicos each in the order of the numbers, the last the rest', () => {
    const made = makeUpSacks(sampling(), { ...send, numbers: [...numbers].reverse() });
    expect(made.ok && made.value.map(sackRange)).toEqual([
      'ZQ000131–ZQ000135 (5)',
      'ZQ000136–ZQ000140 (5)',
      'ZQ000141–ZQ000142 (2)',
    ]);
  });

  test('a bag left out between two that go is refused', () => {
    expect(codes({ numbers: numbers.filter((each) => each !== 'ZQ000136') })).toEqual(['dispatch-gap']);
  });

  test('one that is void or sent before is no gap', () => {
    const spared = numbers.filter((each) => each !== 'ZQ000136');
    const torn = issued.map((bag) => (bag.number === 'ZQ000136' ? voidBag(bag.number) : bag));
    expect(codes({ numbers: spared, issued: torn })).toEqual([]);
    expect(codes({ numbers: spared, sentBefore: ['ZQ000136'] as never })).toEqual([]);
  });

  test('a bag twice, one sent before, one never issued and one void are refused', () => {
    expect(codes({ numbers: [...numbers, 'ZQ000136'] })).toEqual(['dispatch-double']);
    expect(codes({ sentBefore: ['ZQ000136'] as never })).toEqual(['dispatch-double']);
    expect(codes({ numbers: [...numbers, 'ZQ000300'] })).toEqual(['dispatch-not-issued']);
    expect(codes({ issued: [...issued, voidBag('ZQ000300')], numbers: [...numbers, 'ZQ000300'] })).toEqual([
      'dispatch-not-issued',
    ]);
  });
});

test('a count or a seal that is off at a transfer names the two hands', () => {
  const link = { at: NOON, from: 'R. Amari', to: 'freight', sacks: 3, sealsWhole: true };
  const found = checkTransfers({
    ...dispatched(),
    transfers: [link, { ...link, from: 'freight', to: 'Assay House', sacks: 2, sealsWhole: false }],
  });
  expect(found.map((each) => [each.place.thing, each.problem])).toEqual([
    ['dispatch D1, from freight to Assay House', '2 sacks counted, 3 sent; a seal was broken.'],
  ]);
});

test('a receipt that lists what was sent raises nothing', () => {
  expect(checkReceipt(dispatched(), numbers)).toEqual([]);
});

test('a receipt with one missing, one strange and one doubled names each', () => {
  const received = [...numbers.slice(1), 'ZQ000999', 'ZQ000140'];
  expect(checkReceipt(dispatched(), received).map((each) => [each.problem, each.excerpt])).toEqual([
    ['1 not received.', 'ZQ000131'],
    ['1 received and never sent.', 'ZQ000999'],
    ['1 received twice.', 'ZQ000140'],
  ]);
});

test("the laboratory's sheet is blind and the camp's is not", () => {
  const bags = issued.map((bag) => ({ ...bag, hole: 'ZQRC004' }));
  expect(laboratorySheet(dispatched()).split('\r\n').slice(0, 3)).toEqual([
    'sack,sample',
    '1,ZQ000131',
    '1,ZQ000132',
  ]);
  expect(laboratorySheet(dispatched())).not.toMatch(/standard|blank|duplicate|ZQRC004/);
  expect(campSheet(dispatched(), bags).split('\r\n')[3]).toBe(
    '1,ZQ000133,ZQRC004,field duplicate,1,2,ZQ000132,',
  );
});

test('a dispatch is a noun that can be kept in a file', () => {
  expect(dispatchNoun.safeParse(dispatched()).success).toBe(true);
  expect(dispatchNoun.safeParse({ ...dispatched(), sacks: [] }).success).toBe(false);
});
