import { expect, test } from 'vitest';
import { checkDigitOf } from '../../src/sampling/numbers/check-digit.ts';

// From memory: the worked example that stands in many descriptions of ISO/IEC 7812-1 Annex B: 7992739871 takes the digit 3.
test('Luhn gives the digit of the example of ISO/IEC 7812-1', () => {
  expect(checkDigitOf('7992739871', 'luhn')).toBe('3');
});

// From memory: ISO 7064's example of MOD 11,10: 0794 takes the digit 5.
test('mod 11,10 gives the digit of the example of ISO 7064', () => {
  expect(checkDigitOf('0794', 'mod 11,10')).toBe('5');
});
