/** Cholesky factor of a symmetric positive matrix given by the rows of its lower triangle. */
export function factorOf(lower: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const factor: number[][] = [];
  lower.forEach((row, i) => {
    const made: number[] = [];
    for (let j = 0; j <= i; j++) {
      let rest = row[j]!;
      const above = j === i ? made : factor[j]!;
      for (let k = 0; k < j; k++) rest -= made[k]! * above[k]!;
      made.push(j === i ? Math.sqrt(Math.max(rest, Number.EPSILON)) : rest / above[j]!);
    }
    factor.push(made);
  });
  return factor;
}

/** The vector that a lower triangle turns into `of`. */
export function solveLower(factor: readonly (readonly number[])[], of: readonly number[]): readonly number[] {
  const solved: number[] = [];
  of.forEach((value, i) => {
    const row = factor[i]!;
    let rest = value;
    for (let k = 0; k < i; k++) rest -= row[k]! * solved[k]!;
    solved.push(rest / row[i]!);
  });
  return solved;
}

/** Sum of the products of two vectors, one by one. */
export function inner(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, index) => sum + value * b[index]!, 0);
}
