/** Ways of making a check digit behind a bag number. `mod 11,10` also finds every swap of two neighbours but one pair; Luhn misses 09 and 90. */
export const CHECK_DIGITS = ['luhn', 'mod 11,10'] as const;
export type CheckDigit = (typeof CHECK_DIGITS)[number];

/**
 * The check digit that belongs behind a text of digits, as one digit.
 * Luhn: ISO/IEC 7812-1 Annex B. `mod 11,10`: the hybrid system of ISO 7064.
 */
export function checkDigitOf(digits: string, way: CheckDigit): string {
  return String(way === 'luhn' ? luhn(digits) : mod1110(digits));
}

function luhn(digits: string): number {
  let sum = 0;
  for (let fromRight = 0; fromRight < digits.length; fromRight++) {
    const digit = Number(digits[digits.length - 1 - fromRight]);
    const weighed = fromRight % 2 === 0 ? digit * 2 : digit;
    sum += weighed > 9 ? weighed - 9 : weighed;
  }
  return (10 - (sum % 10)) % 10;
}

function mod1110(digits: string): number {
  let product = 10;
  for (const digit of digits) {
    const sum = (product + Number(digit)) % 10;
    product = ((sum === 0 ? 10 : sum) * 2) % 11;
  }
  return (11 - product) % 10;
}
