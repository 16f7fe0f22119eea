import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { ratesOf } from '../../../src/sampling/scheme/rates.ts';
import { slotAt } from '../../../src/sampling/scheme/scheme.ts';
import { checkScheme } from '../../../src/sampling/scheme/scheme-check.ts';
import { checkStock, stockOf } from '../../../src/sampling/scheme/stock.ts';
import { SETTINGS, sampling, withSlots } from '../build.ts';

const codes = (of: ReturnType<typeof sampling>): readonly string[] =>
  checkScheme(of).map((each) => each.code);
const controls = (changed: Partial<typeof SETTINGS.controls>) =>
  sampling({ controls: { ...SETTINGS.controls, ...changed } });

test('a number reserved twice is found with the number, before a bag is filled', () => {
  const scheme = withSlots([
    { every: 20, at: 0, kind: 'standard' },
    { every: 30, at: 10, kind: 'blank' },
  ]);
  expect(checkScheme(scheme)[0]).toMatchObject({
    code: 'scheme-reserved-twice',
    excerpt: 'ZQ000040',
    problem: 'ZQ000040 is reserved for a standard and for a blank.',
  });
});

test('two slots are said to meet exactly where some number is in both', () => {
  const slot = fc
    .record({ every: fc.integer({ min: 2, max: 40 }), at: fc.nat(39) })
    .filter((s) => s.at < s.every);
  fc.assert(
    fc.property(slot, slot, (a, b) => {
      const scheme = withSlots([
        { ...a, kind: 'standard' },
        { ...b, kind: 'blank' },
      ]);
      const meets = Array.from({ length: a.every * b.every }, (_, serial) => serial).some(
        (serial) => serial % a.every === a.at && serial % b.every === b.at,
      );
      expect(codes(scheme).includes('scheme-reserved-twice')).toBe(meets);
    }),
  );
});

test('a slot that no number comes to is found', () => {
  expect(codes(withSlots([{ every: 20, at: 20, kind: 'standard' }]))).toContain('scheme-slot-never');
});

test('a usual kind that is not among the kinds of its slot is found', () => {
  const scheme = withSlots([{ every: 20, at: 1, oneOf: ['blank', 'standard'], usually: 'field duplicate' }]);
  expect(codes(scheme)).toContain('scheme-slot-usual');
});

test('rates count controls in a hundred primaries, over the full round of the slots', () => {
  expect(ratesOf(sampling())).toEqual({
    standard: expect.closeTo(100 / 37, 9),
    blank: expect.closeTo(100 / 37, 9),
    'field duplicate': expect.closeTo(100 / 37, 9),
  });
});

test('a rate wanted that the slots do not reach is found with both figures', () => {
  const short = checkScheme(controls({ wanted: { standardPercent: 5 } })).find(
    (each) => each.code === 'scheme-rate-short',
  );
  expect(short?.problem).toBe('5 standards in 100 samples are wanted, and the slots give 2.7.');
});

test('a scheme that reserves standards where none is listed is found', () => {
  expect(codes(controls({ standards: [] }))).toContain('control-without-material');
  expect(codes(sampling())).not.toContain('control-without-material');
});

test('blocks of two rigs that share numbers are found, and one that runs backwards', () => {
  const blocks = (list: typeof SETTINGS.numbers.blocks) =>
    codes(sampling({ numbers: { ...SETTINGS.numbers, blocks: list } }));
  expect(
    blocks([
      { rig: 'Rig 1', first: 'ZQ000001', last: 'ZQ000500' },
      { rig: 'Rig 2', first: 'ZQ000500', last: 'ZQ000900' },
    ]),
  ).toContain('number-block');
  expect(blocks([{ rig: 'Rig 1', first: 'ZQ000500', last: 'ZQ000001' }])).toContain('number-block');
});

test('prefixes of which one begins another are found', () => {
  const numbers = { ...SETTINGS.numbers, prefixes: ['ZQ', 'ZQ1'] };
  expect(codes(sampling({ numbers }))).toContain('number-prefixes');
});

test('a material is named when it is down to the last few, and no more once it is retired', () => {
  const used = Array.from({ length: 36 }, (_, n) => ({
    number: `ZQ00${n}`,
    kind: 'standard' as const,
    material: 'low',
  }));
  expect(checkStock(sampling(), used).map((each) => each.problem)).toEqual(['4 left.']);
  const standards = SETTINGS.controls.standards.map((each) => ({ ...each, retired: true as const }));
  expect(checkStock(controls({ standards }), used)).toEqual([]);
});

test('a number is in a slot where its serial leaves `at`', () => {
  expect(slotAt(sampling().slots, 120)?.kind).toBe('standard');
  expect(slotAt(sampling().slots, 121)).toBeUndefined();
});

test('stock is what came to site less what is in bags, spoiled ones included', () => {
  const bags = [
    { number: 'ZQ000120', kind: 'standard' as const, material: 'low' },
    { number: 'ZQ000160', kind: 'spoiled' as const, material: 'low' },
    { number: 'ZQ000147', kind: 'blank' as const, material: 'crushed glass' },
  ];
  expect(stockOf(sampling(), bags).map((each) => [each.material, each.used, each.left])).toEqual([
    ['low', 2, 38],
    ['middle', 0, 40],
    ['high', 0, 40],
    ['crushed glass', 1, 39],
  ]);
});
