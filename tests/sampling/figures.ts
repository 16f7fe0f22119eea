import { drill, type Outcome } from './simulator.ts';
import { SLIPS } from './slips.ts';

/** Seeded holes from a first seed, each with a slip, every kind in turn. */
export function simulate(firstSeed: number, holes: number): readonly Outcome[] {
  return Array.from({ length: holes }, (_, index) =>
    drill(firstSeed + index, SLIPS[index % SLIPS.length] ?? 'none'),
  );
}

/** Counts of what each kind of slip was named, the most frequent name first. */
export function confusion(
  outcomes: readonly Outcome[],
  nameOf: (outcome: Outcome) => string | undefined,
): ReadonlyMap<string, readonly (readonly [named: string, count: number])[]> {
  return new Map(
    SLIPS.map((slip) => {
      const those = outcomes.filter((each) => each.visible && each.slip === slip);
      const counts = countsOf(those.map((each) => nameOf(each) ?? 'nothing'));
      return [slip, [...counts].sort((a, b) => b[1] - a[1])];
    }),
  );
}

/**
 * What the best namer could reach that has the numbers alone and these very holes to learn from: of the slips that read alike it
 * gives all the name that is the most frequent among them. A share of the slips that are visible.
 */
export function bestFromNumbers(outcomes: readonly Outcome[]): number {
  const groups = [...byReading(outcomes).values()];
  const right = groups.map((slips) => Math.max(...countsOf(slips).values()));
  return sum(right) / sum(groups.map((slips) => slips.length));
}

/** Pairs of slips that give the very same numbers in the same rod, with the readings that they share, most first. */
export function sameNumbers(
  outcomes: readonly Outcome[],
): readonly (readonly [pair: string, count: number])[] {
  const pairs = [...byReading(outcomes).values()].flatMap((slips) => {
    const kinds = [...new Set(slips)].sort();
    return kinds.flatMap((one, index) => kinds.slice(index + 1).map((other) => pairOf(one, other)));
  });
  return [...countsOf(pairs)].sort((a, b) => b[1] - a[1]);
}

/** Two kinds as one name, in either order. */
export function pairOf(one: string, other: string): string {
  return [one, other].sort().join(' = ');
}

function byReading(outcomes: readonly Outcome[]): ReadonlyMap<string, readonly string[]> {
  const groups = new Map<string, string[]>();
  for (const { read, slip } of outcomes)
    if (read !== undefined) groups.set(read, [...(groups.get(read) ?? []), slip]);
  return groups;
}

function countsOf(names: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return counts;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((all, each) => all + each, 0);
}
