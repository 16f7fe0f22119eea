import { expect, test } from 'vitest';
import { bag as bagNoun } from '../../../src/hole/bags.ts';
import { issue, placedBag, unbagged } from '../../../src/sampling/stream/issue.ts';
import { atCollar, NOON, primary, sampling } from '../build.ts';

test('what a rod issues is a fact that needs no scheme to be read again', () => {
  const bags = issue(sampling(), { ...atCollar('ZQ000118'), drilledMm: 20_000 });
  expect(bags.every((each) => bagNoun.safeParse(each).success)).toBe(true);
  expect(bags.find((each) => each.kind === 'standard')?.material).toMatch(/^(low|middle|high)$/);
  expect(bags.find((each) => each.kind === 'field duplicate')).toMatchObject({
    of: 'ZQ000132',
    method: 'second chute',
  });
});

test('a rod done again at the same depth issues nothing', () => {
  const state = { ...atCollar('ZQ000101'), drilledMm: 6000 };
  expect(issue(sampling(), { ...state, bags: issue(sampling(), state) })).toEqual([]);
});

test('metres that no numbered bag is left for are counted', () => {
  const short = { ...atCollar('ZQ000101', 'ZQ000104'), drilledMm: 6000 };
  expect(unbagged(sampling(), short)).toEqual({ fromMm: 4000, toMm: 6000 });
  expect(unbagged(sampling(), { ...short, drilledMm: 4000 })).toBeUndefined();
});

test('a standard put off is placed under the number kept for it, with the lot of that number', () => {
  const wait = { number: 'ZQ000160', kind: 'standard', reason: 'no sachets here', at: NOON } as const;
  const placed = placedBag(sampling(), wait);
  const inTime = issue(sampling(), { ...atCollar('ZQ000159'), drilledMm: 1000 })[1];
  expect(placed).toMatchObject({ ok: true, value: { number: 'ZQ000160', material: inTime?.material } });
});

test('a duplicate put off is speared from the pile of its primary, and refused without one', () => {
  const wait = { number: 'ZQ000133', kind: 'field duplicate', reason: 'chute blocked', at: NOON } as const;
  expect(placedBag(sampling(), wait, primary('ZQ000132', 1, 2))).toMatchObject({
    ok: true,
    value: { of: 'ZQ000132', method: 'spear', fromMm: 1000, toMm: 2000, reason: 'put off: chute blocked' },
  });
  const refused = placedBag(sampling(), wait);
  expect(refused.ok ? [] : refused.findings.map((each) => each.code)).toEqual(['duplicate-without-primary']);
});
