import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  bagNumberDistance,
  bagNumberPattern,
  endsWithDigits,
  formatBagNumber,
  isTransposed,
  parseBagNumber,
} from '../../../src/sampling/numbers/bag-number.ts';
import { CHECK_DIGITS } from '../../../src/sampling/numbers/check-digit.ts';

const plain = { prefixes: ['ZQA', 'ZQB'], digits: 6 };
const forms = fc.constantFrom(plain, ...CHECK_DIGITS.map((checkDigit) => ({ ...plain, checkDigit })));

test('a number reads back as it was written, of every form', () => {
  fc.assert(
    fc.property(forms, fc.constantFrom(...plain.prefixes), fc.nat(999_999), (form, prefix, serial) => {
      const text = formatBagNumber(form, { prefix, serial });
      expect(parseBagNumber(form, text)).toEqual({ prefix, serial });
      expect(bagNumberPattern(form).test(text)).toBe(true);
    }),
  );
});

test('one wrong digit is refused where there is a check digit', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...CHECK_DIGITS),
      fc.nat(999_999),
      fc.nat(6),
      fc.integer({ min: 1, max: 9 }),
      (checkDigit, serial, place, by) => {
        const form = { ...plain, checkDigit };
        const text = formatBagNumber(form, { prefix: 'ZQA', serial });
        const at = 3 + place;
        const wrong = text.slice(0, at) + ((Number(text[at]) + by) % 10) + text.slice(at + 1);
        expect(parseBagNumber(form, wrong)).toBeUndefined();
      },
    ),
  );
});

test.each(['ZQA00012', 'ZQA0000123', 'ZQC000123', 'zqa000123', 'ZQA00012x', '', 'ZQA-00123'])(
  '%s is not a number',
  (text) => {
    expect(parseBagNumber(plain, text)).toBeUndefined();
  },
);

test('the distance between numbers is counted within one prefix only', () => {
  expect(bagNumberDistance({ prefix: 'ZQA', serial: 7 }, { prefix: 'ZQA', serial: 4 })).toBe(-3);
  expect(bagNumberDistance({ prefix: 'ZQA', serial: 7 }, { prefix: 'ZQB', serial: 9 })).toBeUndefined();
});

test('the last digits are enough to know a number, and none are not', () => {
  expect(endsWithDigits('ZQA000163', '63')).toBe(true);
  expect(endsWithDigits('ZQA000163', '64')).toBe(false);
  expect(endsWithDigits('ZQA000163', '')).toBe(false);
});

test('transposed means one swap of two unlike neighbours', () => {
  expect(isTransposed('163', '136')).toBe(true);
  expect(isTransposed('163', '631')).toBe(false);
  expect(isTransposed('163', '361')).toBe(false);
  expect(isTransposed('166', '166')).toBe(false);
});

test('a serial that the form has no digits for is a fault of the caller', () => {
  expect(() => formatBagNumber(plain, { prefix: 'ZQA', serial: 1_000_000 })).toThrow(RangeError);
});
