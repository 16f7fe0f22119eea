/** Metres to an international foot, exact. */
export const METRES_PER_FOOT = 0.3048;

/** A depth with two digits of its whole metres the other way round: 24 for 42, 201 for 102; swaps of neighbours first. */
export function swappedDigits(depthM: number): readonly number[] {
  const [whole = '', part = ''] = depthM.toFixed(3).split('.');
  const digits = [...whole.padStart(2, '0')];
  const pairs = digits.flatMap((_, first) =>
    digits.slice(first + 1).map((_, apart) => [first, first + 1 + apart] as const),
  );
  return pairs
    .filter(([first, second]) => digits[first] !== digits[second])
    .sort(([a, b], [c, d]) => b - a - (d - c))
    .map(([first, second]) => {
      const swapped = digits.with(first, digits[second]!).with(second, digits[first]!);
      return Number(`${swapped.join('')}.${part}`);
    });
}
