import { describe, expect, it, test } from 'vitest';
import { isPriced, itemAmong, itemKey } from '../../src/shift/item-name.ts';
import { queryList } from '../../src/shift/query-list.ts';
import { at, claimed, doing, ended, RULES, rulesOf, STARTED, withContract } from './build.ts';

describe('one consumable, however it is written', () => {
  test.each([
    ['hammer bit', 'Hammer bits'],
    ['hammer-bit', 'hammer  bit'],
    ['sub', 'subs'],
    ['filter box', 'filter boxes'],
    ['battery', 'batteries'],
    ['brass', 'brass'],
  ])('%s is %s', (one, other) => {
    expect(itemKey(one)).toBe(itemKey(other));
    expect(itemAmong([one], other)).toBe(one);
  });

  test.each([
    ['sub', 'stub'],
    ['hammer bit', 'hammer'],
    ['bit', 'drag bit'],
  ])('%s is not %s', (one, other) => {
    expect(itemKey(one)).not.toBe(itemKey(other));
  });

  it('is priced as the contract names it, and none is missing where the contract pays for none', () => {
    expect(isPriced(RULES.contract, 'Hammer bits')).toBe(true);
    expect(isPriced(RULES.contract, 'drill oil')).toBe(false);
    expect(isPriced({ ...RULES.contract, consumables: [] }, 'drill oil')).toBe(true);
  });
});

describe('a bill with consumables written in the plural', () => {
  const used = (item: string) => [{ item, count: 2 }];
  const shift = (item: string) =>
    ended(doing(STARTED, ['06:00', { activity: 'breakdown', used: used(item) }]), '18:00');
  const both = (own: string, plod: string, rules = RULES) =>
    queryList(
      claimed(shift(own), { activity: 'breakdown', minutes: 720, used: used(plod) }),
      [],
      rules,
      at('20:00'),
    );

  it('pays them on both sides, and has no query', () => {
    const { ownBill, plodBill, queries } = both('hammer bits', 'Hammer Bit');
    // 2 × 1,500.00 + 10 %
    expect(ownBill.lines).toMatchObject([{ what: 'hammer bit', cents: 330_000 }]);
    expect(plodBill.lines).toEqual(ownBill.lines);
    expect(queries).toEqual([]);
  });

  it('says once what is not in the contract, and what is', () => {
    expect(both('subs', 'sub').queries.map(({ problem, remedy }) => [problem, remedy])).toEqual([
      [
        'subs: 2 used, not in the contract, so nothing is paid for it',
        'The contract pays for hammer bit. Ask which of them it is, or agree a price for project.json, under shift.',
      ],
    ]);
  });

  it('pays by the hour for what ran beside, in the plural too', () => {
    const rules = rulesOf(withContract({ concurrent: [{ item: 'booster', centsPerHour: 10_000 }] }));
    const ran = ended(doing(STARTED, ['06:00', { activity: 'breakdown', beside: ['boosters'] }]), '18:00');
    expect(queryList(ran, [], rules, at('20:00')).ownBill.lines).toMatchObject([
      { what: 'hours booster', cents: 120_000 },
    ]);
  });
});
