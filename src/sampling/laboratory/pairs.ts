/** A pair of results of one metre. */
export interface Pair {
  readonly a: number;
  readonly b: number;
}

/** Difference of a pair relative to its mean, in percent: 100 · |a − b| / mean. Undefined where the mean is not over 0. */
export function relativeDifference({ a, b }: Pair): number | undefined {
  const mean = (a + b) / 2;
  return mean > 0 ? (100 * Math.abs(a - b)) / mean : undefined;
}

/** Coefficient of variation of a pair, in percent: its relative difference / √2. Undefined where the mean is not over 0. */
export function pairVariation(pair: Pair): number | undefined {
  const difference = relativeDifference(pair);
  return difference === undefined ? undefined : difference / Math.SQRT2;
}

/**
 * Root mean square of the coefficients of variation of pairs, in percent: √(Σ CV² / n), pairs without one left out. The average
 * that Stanley & Lawie (2007, Exploration and Mining Geology 16) recommend over others. Undefined of no pair.
 */
export function rootMeanSquareVariation(pairs: readonly Pair[]): number | undefined {
  const squares = pairs.flatMap((pair) => {
    const variation = pairVariation(pair);
    return variation === undefined ? [] : [variation ** 2];
  });
  if (squares.length === 0) return undefined;
  return Math.sqrt(squares.reduce((sum, each) => sum + each, 0) / squares.length);
}
