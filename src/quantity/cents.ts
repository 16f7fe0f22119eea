/** Money as integer cents of the contract's currency. */
export type Cents = number & { readonly unit: 'cents' };

/** Named rounding of a fraction of a cent. `half-up` is away from zero at the half, as an invoice rounds. */
export type Rounding = 'half-up' | 'half-even' | 'down';

/**
 * Cents from a number that may hold a fraction of a cent. A quotient of two integers (cents × minutes / 60) is rounded
 * exactly: division is correctly rounded, so it hits a half only where there is one. Throws RangeError unless the value is
 * finite and small enough for whole cents to be exact.
 */
export function cents(value: number, rounding: Rounding): Cents {
  if (!(Math.abs(value) < Number.MAX_SAFE_INTEGER))
    throw new RangeError(`money must be finite and below 2^53 cents, got ${value}`);
  const sign = value < 0 ? -1 : 1;
  const size = Math.abs(value);
  const floor = Math.floor(size);
  const fraction = size - floor;
  const up =
    rounding === 'half-up'
      ? fraction >= 0.5
      : rounding === 'half-even'
        ? fraction > 0.5 || (fraction === 0.5 && floor % 2 === 1)
        : false;
  return (sign * (floor + (up ? 1 : 0)) + 0) as Cents;
}

/**
 * A percentage of an amount, rounded once. A percent has up to four decimals; it is counted in whole ten-thousandths, so that 1.1 %
 * and its like hit a half only where there is one.
 */
export function percentOf(amount: number, percent: number, rounding: Rounding): Cents {
  return cents((amount * Math.round(percent * 10_000)) / 1_000_000, rounding);
}

/** `1,234.50`: thousands apart, two decimals, the currency left to the heading. */
export function formatCents(amount: number): string {
  const size = Math.abs(amount);
  const whole = Math.floor(size / 100)
    .toString()
    .replace(/\B(?=(\d{3})+$)/g, ',');
  return `${amount < 0 ? '-' : ''}${whole}.${String(size % 100).padStart(2, '0')}`;
}
